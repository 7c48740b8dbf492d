/** What a person does with the page, in a real browser. Runs with AIRTALLY_SLOW=1. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { AppService } from "../../edge/server/index.ts";
import { type BrowserApp, type Look, startBrowserApp } from "./browser-app.ts";
import { FIXTURE_SERVICE } from "./fixture-service.ts";

/** the channel lists that reached the check, in their order */
const lists: (string | null)[] = [];
const service: AppService = {
  ...FIXTURE_SERVICE,
  check: (request) => {
    lists.push(request.channelsText);
    return FIXTURE_SERVICE.check(request);
  },
};

let app: BrowserApp;
beforeAll(async () => {
  app = await startBrowserApp(service);
}, 120_000);
afterAll(() => app?.close());

const LOOKS: readonly Look[] = [
  { width: 1440, scheme: "light" },
  { width: 1440, scheme: "dark" },
  { width: 390, scheme: "light" },
  { width: 390, scheme: "dark" },
];
const DESK: Look = { width: 1440, scheme: "light" };

const RECORDING = { name: "invented.csv", mimeType: "text/csv", buffer: Buffer.from("time,rpm\n0,800\n") };
const EMPTY = { name: "empty.csv", mimeType: "text/csv", buffer: Buffer.from("") };

async function violations(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"])
    .analyze();
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join("; ")}`);
}

async function fillEngine(page: Page): Promise<void> {
  await page.getByLabel("Displacement, all cylinders").fill("1998 cm3");
  await page.getByLabel("Cylinders", { exact: false }).nth(1).fill("4");
  await page.getByLabel("Fuel needed").selectOption("petrol");
  await page.getByLabel("What the engine computer doses fuel by").selectOption("meter");
}

describe("the page opens", () => {
  it("with the demo job answered, saying that it is invented, and asks nobody else for anything", async () => {
    const { page, complaints, requests } = await app.open(DESK);
    expect(await page.locator(".app-note").textContent()).toContain("invented");
    expect(await page.locator(".stamp").textContent()).toMatch(/likely/i);
    expect(await page.locator("h2").allTextContents()).toEqual(
      expect.arrayContaining(["Air path", "Tally", "Findings", "Recordings", "Cautions"]),
    );
    expect(complaints).toEqual([]);
    expect(requests.filter((address) => !address.startsWith(app.url))).toEqual([]);
  });

  it.each(LOOKS)("without a barrier that axe can find ($width, $scheme)", async (look) => {
    const { page } = await app.open(look);
    for (const details of await page.locator("details").all())
      await details.evaluate((d) => d.setAttribute("open", ""));
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "New job" }).click();
    await page.getByRole("button", { name: "Check this engine" }).click();
    for (const details of await page.locator("details").all())
      await details.evaluate((d) => d.setAttribute("open", ""));
    expect(await violations(page)).toEqual([]);
  });

  it("at 320 px without scrolling sideways", async () => {
    const { page } = await app.open({ width: 320, scheme: "light" });
    const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
    expect(await wide()).toBeLessThanOrEqual(320);
    await page.getByRole("button", { name: "New job" }).click();
    expect(await wide()).toBeLessThanOrEqual(320);
  });
});

describe("a person with a recording", () => {
  it("drops it on the page, says what is known, and gets a card", async () => {
    const { page, complaints } = await app.open(DESK);
    const transfer = await page.evaluateHandle(() => {
      const data = new DataTransfer();
      data.items.add(new File(["time,rpm\n0,800\n"], "dropped.csv", { type: "text/csv" }));
      return data;
    });
    await page.dispatchEvent("main", "drop", { dataTransfer: transfer });
    await page.getByText("dropped.csv", { exact: true }).first().waitFor();
    await page.getByText("columns recognised").waitFor();
    await fillEngine(page);
    await page.getByRole("button", { name: "Check this engine" }).click();
    await page.waitForSelector(".stamp");
    expect(await page.locator(".app-note").textContent()).not.toContain("invented");
    expect(await page.getByRole("status").first().textContent()).toContain("Answered. Likely");
    expect(complaints).toEqual([]);
  });

  it("uses the keyboard alone", async () => {
    const { page } = await app.open(DESK);
    await page.getByRole("button", { name: "New job" }).focus();
    await page.keyboard.press("Enter");
    await page.setInputFiles("#field-recordings", RECORDING);
    await page.getByLabel("Displacement, all cylinders").focus();
    await page.keyboard.type("1998 cm3");
    await page.keyboard.press("Tab");
    await page.keyboard.type("4");
    await page.keyboard.press("Tab");
    await page.keyboard.type("petrol");
    await page.keyboard.press("Tab");
    await page.keyboard.type("its air meter");
    await page.getByRole("button", { name: "Check this engine" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector(".stamp");
  });

  it("is told what is missing, and what to do about a file that cannot be used", async () => {
    const { page } = await app.open(DESK);
    await page.getByRole("button", { name: "New job" }).click();
    await page.getByRole("button", { name: "Check this engine" }).click();
    const list = page.getByRole("alert");
    expect(await list.textContent()).toContain("Recordings");
    expect(await list.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.setInputFiles("#field-recordings", EMPTY);
    await fillEngine(page);
    await page.getByRole("button", { name: "Check this engine" }).click();
    await page.getByText("The file holds nothing.").last().waitFor();
    const alert = await page.locator("main > .failure").textContent();
    expect(alert).toContain("empty.csv");
    expect(alert).toContain("Save the recording again.");
  });

  it("corrects a channel and runs again, and can undo it", async () => {
    const { page } = await app.open(DESK);
    await page.getByRole("button", { name: "New job" }).click();
    await page.setInputFiles("#field-recordings", RECORDING);
    await fillEngine(page);
    await page.getByRole("button", { name: "Check this engine" }).click();
    await page.getByRole("button", { name: "Correct MAP (kPa)" }).click();
    const form = page.getByRole("form", { name: "Correct MAP (kPa)" });
    await form.getByLabel("is").selectOption("");
    await form.getByRole("button", { name: "Run again" }).click();
    await page.getByText("is left out, as you said").waitFor();
    expect(JSON.parse(lists.at(-1) ?? "null")).toEqual({
      format: "airtally-channels/1",
      channels: [{ header: "MAP (kPa)", ignore: true }],
    });
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("is left out, as you said").waitFor({ state: "detached" });
    expect(lists.at(-1)).toBeNull();
  });

  it("cancels a run and loses nothing", async () => {
    const { page } = await app.open(DESK);
    await page.route("**/api/check", () => {});
    await page.getByRole("button", { name: "New job" }).click();
    await page.setInputFiles("#field-recordings", RECORDING);
    await fillEngine(page);
    await page.getByRole("button", { name: "Check this engine" }).click();
    await page.getByRole("button", { name: "Cancel" }).click();
    expect(await page.getByRole("status").first().textContent()).toContain("Cancelled");
    expect(await page.getByLabel("Displacement, all cylinders").inputValue()).toBe("1998 cm3");
  });

  it("saves the report and the result as files", async () => {
    const { page } = await app.open(DESK);
    const report = page.waitForEvent("download");
    await page.getByRole("link", { name: "Save report" }).click();
    expect((await report).suggestedFilename()).toBe("airtally-report.html");
    const result = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save result" }).click();
    expect((await result).suggestedFilename()).toBe("airtally-result.json");
  });

  it.each(["A4", "Letter"])("prints it (%s)", async (format) => {
    const { page } = await app.open(DESK);
    const pdf = await page.pdf({ format });
    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    // pages of the fixture: a print that lost its card would be one short page
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g) ?? [];
    expect(pages.length).toBeGreaterThanOrEqual(3);
  });
});
