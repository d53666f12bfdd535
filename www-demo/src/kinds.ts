// Kinds of events in the words of the page.
const KINDS: Record<string, string> = {
  session_recorded: "Session",
  next_day_report: "Morning after",
  session_missed: "Session missed",
  layoff_noted: "Break",
  pain_report: "Pain",
  usual_pain_agreed: "Usual pain agreed",
  symptom_report: "Stop sign",
  day_report: "The day\u2019s questions",
  ask_answered: "What was asked is answered",
  coach_sign_off: "Coach signed off",
  coach_override: "Coach overruled",
  advance_accepted: "Step taken",
  advance_declined: "Step declined",
  variant_changed: "Another rung",
  range_changed: "Another range",
  bar_or_discs_changed: "Other bar or discs",
  rater_changed: "Other eyes",
  body_mass_recorded: "Body mass",
  clearance_recorded: "Clearance",
  clearance_expired: "Clearance ended",
  parameters_changed: "Settings of the lifts",
  block_started: "Block begins",
  block_ended: "Block ends",
  role_set: "Role of a lift",
  function_tested: "Everyday test",
};
export function kindWords(kind: string): string {
  return KINDS[kind] ?? kind.replaceAll("_", " ");
}

/** What is asked before training, each with its words. */
export const ASKS = [
  ["fever", "Fever"],
  ["dizziness", "Dizzy"],
  ["palpitations", "Heart racing or irregular"],
  ["fall", "A fall since last time"],
  ["new_medicine", "A new medicine"],
] as const;
