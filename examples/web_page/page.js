// What does a set to failure say about the load for one repetition? Several published equations, side by side.
import init, { oneRm, BismarError } from "bismar";

const EQUATIONS = ["epley1985", "brzycki1993", "mayhew1992", "lombardi1989", "kemmler2006"];
const form = document.querySelector("form");
const status = document.querySelector("#answer");
const table = document.querySelector("table");

// The numbers come from the library; the page only shows them.
function estimates() {
  const given = { load: { kg: Number(form.load.value) }, reps: Number(form.reps.value) };
  return EQUATIONS.map((name) => [name, oneRm[name](given).kg]);
}

function show() {
  try {
    const rows = estimates();
    const kilograms = rows.map(([, kg]) => kg);
    status.textContent = `${Math.min(...kilograms).toFixed(1)} to ${Math.max(...kilograms).toFixed(1)} kg`;
    table.tBodies[0].replaceChildren(...rows.map(([name, kg]) => {
      const row = document.createElement("tr");
      row.append(cell(name), cell(kg.toFixed(1)));
      return row;
    }));
    table.hidden = false;
  } catch (error) {
    if (!(error instanceof BismarError)) throw error;
    status.textContent = `${error.field}: ${error.allowed}`;
    table.hidden = true;
  }
}

function cell(text) {
  const element = document.createElement("td");
  element.textContent = text;
  return element;
}

await init();
form.addEventListener("input", show);
form.addEventListener("submit", (event) => event.preventDefault());
show();
