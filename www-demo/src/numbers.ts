// Numbers as people write and read them. Rounding here is for the eye only.
import { flat } from "bismar-page-package";

export type Unit = "kg" | "lb";
export interface Mass {
  kg: number;
}

/** Kilograms in a pound, exactly. */
export const POUND = 0.45359237;
/** Beyond this the library takes no mass; one that it refused is said all the same. */
const MOST_KG = 2000;
function pounds(kg: number): number {
  return Math.abs(kg) <= MOST_KG ? flat.quantity.massInPounds(kg) : kg / POUND;
}

let unit: Unit = "kg";
export function setUnit(next: Unit): void {
  unit = next;
}
export function unitNow(): Unit {
  return unit;
}

// Not by `Intl`: some browsers refuse every locale where the device's own is unset.
export function plain(value: number, digits = 2): string {
  const text = String(Number(value.toFixed(digits)));
  return text === "-0" ? "0" : text.replace("-", "\u2212");
}

export function signed(value: number, digits = 2): string {
  const text = plain(value, digits);
  return value > 0 && text !== "0" ? `+${text}` : text;
}

export function kilograms(mass: Mass): string {
  return `${plain(mass.kg)} kg`;
}
export function inPounds(mass: Mass): string {
  return `${plain(pounds(mass.kg), 1)} lb`;
}
/** Masses that limit a load of whoever is in view: no load that is within one of them is shown past it. */
let limiting: Mass[] = [];
export function setLimiting(next: Mass[]): void {
  limiting = next;
}
/** A number that stands for a mass, and where that would look past a limit which the mass is within, the mass rounded down. */
function within(mass: Mass, number: number): number {
  const passed = limiting.some((most) => most.kg >= mass.kg && number > bound(most, Math.floor));
  if (!passed) return number;
  return unit === "kg" ? Math.floor(mass.kg * 100) / 100 : Math.floor(pounds(mass.kg) * 10) / 10;
}
/** A mass as it is loaded, in the unit in use: the nearest. */
function nearest(mass: Mass): number {
  return within(mass, Number(unit === "kg" ? mass.kg.toFixed(2) : pounds(mass.kg).toFixed(1)));
}
/** In the unit in use; what helps is said as help. */
export function mass(mass: Mass): string {
  const value = nearest(mass);
  return mass.kg < 0 ? `${plain(-value)} ${unit} of help` : `${plain(value)} ${unit}`;
}
/** By how much of a thousandth a number of the unit may be off a whole one and still be it: numbers here are binary. */
const HAIR = 1e-6;
/** As it is where that is whole in thousandths, else in steps of which so many make a whole. */
function rounded(value: number, steps: number, round: (steps: number) => number): number {
  const thousandths = Math.round(value * 1000);
  return Math.abs(value * 1000 - thousandths) < HAIR ? thousandths / 1000 : round(value * steps) / steps;
}
function bound(mass: Mass, round: (steps: number) => number): number {
  return unit === "kg" ? rounded(mass.kg, 100, round) : rounded(pounds(mass.kg), 10, round);
}
function bounded(mass: Mass, round: (steps: number) => number): string {
  return inUnit(bound(mass, round));
}
function inUnit(value: number): string {
  return value < 0 ? `${plain(-value, 3)} ${unit} of help` : `${plain(value, 3)} ${unit}`;
}
/** A mass that is not to be passed: as it is where that is whole in thousandths, else rounded down. */
export function atMost(mass: Mass): string {
  return bounded(mass, Math.floor);
}
export function atMostNumber(mass: Mass): string {
  return plain(bound(mass, Math.floor), 3);
}
/** A mass that is to be kept: the same, rounded up. */
export function atLeast(mass: Mass): string {
  return bounded(mass, Math.ceil);
}
export function atLeastNumber(mass: Mass): string {
  return plain(bound(mass, Math.ceil), 3);
}
/** A mass that somebody typed: the same, else the nearest. */
export function written(mass: Mass): string {
  return inUnit(within(mass, bound(mass, Math.round)));
}
export function writtenNumber(mass: Mass): string {
  return plain(within(mass, bound(mass, Math.round)), 3);
}
/** A part of a whole that is not to be passed, in percent: as it was told, else rounded down to a tenth. */
export function atMostPart(part: number): string {
  return `${plain(rounded(part * 100, 10, Math.floor), 3)} %`;
}
/** A range of a lift, and how far one may go: as it is, so that neither looks past the other. */
export function rangeOf(range: { mm: number }): string {
  return `${plain(range.mm, 3)} mm`;
}

/** What a day says of the loads of a lift. */
interface LoadsOfDay {
  load?: Mass | undefined;
  limit: Mass;
  granted: { work: { load: Mass } };
}
/** A load that is not to be passed; one that is loaded is a load as any other, in one way wherever it stands. */
export function atMostOf(most: Mass, ...loaded: (Mass | undefined)[]): string {
  return loaded.some((one) => one?.kg === most.kg) ? mass(most) : atMost(most);
}
export function atMostNumberOf(most: Mass, loaded: Mass | undefined): string {
  return loaded?.kg === most.kg ? massNumber(most) : atMostNumber(most);
}
/** The limit of a day. */
export function limitOfDay({ limit, load, granted }: LoadsOfDay): string {
  return atMostOf(limit, load, granted.work.load);
}
/** The load of a day, or its limit where nothing can be loaded. */
export function loadOfDay({ load, limit }: Pick<LoadsOfDay, "load" | "limit">): string {
  return load ? mass(load) : atMost(limit);
}
export function massNumber(mass: Mass): string {
  return plain(nearest(mass));
}
export function otherUnit(mass: Mass): string {
  return unit === "kg" ? inPounds(mass) : kilograms(mass);
}
/** Load times repetitions of a week: more than any bar carries, so turned into pounds a thousandth at a time. */
export function tonnage(kg: number): string {
  return unit === "kg" ? `${plain(kg, 0)} kg` : `${plain(pounds(kg / 1000) * 1000, 0)} lb`;
}
/** kg values of estimates, without false digits. */
export function estimate(kg: number): string {
  return unit === "kg" ? plain(kg, 0) : plain(pounds(kg), 0);
}
/** A disc by what is marked on it, in the unit that it carries, whatever the page shows elsewhere. */
export function face(nominal: { kg?: number; lb?: number }): string {
  return nominal.lb === undefined ? `${plain(nominal.kg ?? 0, 3)} kg` : `${plain(nominal.lb, 3)} lb`;
}
/** By how much a mass differs, with its sign, in the unit in use. */
export function difference(by: Mass): string {
  return `${signed(unit === "kg" ? by.kg : pounds(by.kg), unit === "kg" ? 2 : 1)} ${unit}`;
}

/** Reads a number with a comma or a point; nothing where there is none. */
export function read(text: string): number | undefined {
  const tidy = text.trim().replace(",", ".").replace("\u2212", "-");
  if (!/^-?\d{1,7}(\.\d{0,4})?$/.test(tidy)) return undefined;
  const value = Number(tidy);
  return Number.isFinite(value) ? value : undefined;
}

/** A mass as it was asked for, for the library: in the unit of the pad, which may be another than the one in use by now. */
export function given(value: number, asked: string): { kg: number } | { lb: number } {
  return asked === "lb" ? { lb: value } : { kg: value };
}

/** Days of a plan count from Monday. */
export function weekday(day: string): number {
  return (new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7;
}
export function weekdayName(at: number): string {
  return WEEKDAYS[(at + 1) % 7] ?? "";
}
const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
/** Day and month of a civil day. */
export function dayOfMonth(day: string): string {
  const at = new Date(`${day}T00:00:00Z`);
  return `${at.getUTCDate()} ${MONTHS[at.getUTCMonth()] ?? ""}`;
}
export function dayShort(day: string): string {
  return `${WEEKDAYS[new Date(`${day}T00:00:00Z`).getUTCDay()] ?? ""} ${dayOfMonth(day)}`;
}
export function dayLong(day: string): string {
  return `${dayOfMonth(day)} ${day.slice(0, 4)}`;
}
export function deviceDay(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}
export function countEntries(number: number): string {
  return number === 1 ? "1 entry" : `${number} entries`;
}
