/** What is wrong in a case: nothing, one cause or two, each of a size that case-parameters.json allows for this engine. */
import type { EngineDesign, Family, Fault, PlantableCause } from "../../src/model-engine/index.ts";
import type { SeededRandom } from "../../src/numerics/index.ts";
import { CASE_PARAMETERS, type CauseRow } from "./case-parameters.ts";
import { pick } from "./pick.ts";

export function drawFaults(family: Family, design: EngineDesign, random: SeededRandom): Fault[] {
  if (random.uniform() < CASE_PARAMETERS.healthyShare) return [];
  const open = CASE_PARAMETERS.causes.filter((row) => canHave(row, family, design));
  const first = pick(open, random);
  const rows = [first];
  if (random.uniform() < CASE_PARAMETERS.pairShare) {
    rows.push(
      pick(
        open.filter((row) => row !== first),
        random,
      ),
    );
  }
  return rows.map((row) => drawFault(row, design, random));
}

export function canHave(row: CauseRow, family: Family, design: EngineDesign): boolean {
  if (row.only !== undefined && !row.only.includes(family)) return false;
  if (row.needs === "egr valve" && design.egrValveArea === null) return false;
  if (row.needs === "fuel held against the manifold" && design.injectors.pressureReference === "ambient") return false;
  return !(row.not ?? []).includes(family);
}

function drawFault(row: CauseRow, design: EngineDesign, random: SeededRandom): Fault {
  const share = random.uniform();
  const plain = row.law === "log" ? row.low * (row.high / row.low) ** share : row.low + (row.high - row.low) * share;
  const sign = row.signs === 2 && random.uniform() < 0.5 ? -1 : 1;
  const bank = drawBank(row, design, random);
  // What is told for a litre is told for the litres it acts on.
  const litres = row.per === "litre" ? (design.displacement * 1e3) / (bank === undefined ? 1 : 2) : 1;
  const size = row.law === "share" ? 1 + sign * plain : sign * plain * litres;
  const cause = row.cause as PlantableCause;
  if (cause === "map-scaled") return { cause, size, pivot: random.uniform() < 0.5 ? "ambient" : "zero" };
  if (cause === "meter-curve-wrong") return { cause, size, errorAt30: size * (2 * random.uniform() - 1) };
  if (cause === "fuel-supply-limited") return { cause, size, loss: 0.12 + 0.2 * random.uniform() };
  return bank === undefined ? { cause, size } : { cause, size, bank };
}

function drawBank(row: CauseRow, design: EngineDesign, random: SeededRandom): 1 | 2 | undefined {
  if (design.banks !== 2 || row.ofOneBank !== true) return undefined;
  if (random.uniform() >= CASE_PARAMETERS.oneBankShare) return undefined;
  return random.uniform() < 0.5 ? 1 : 2;
}
