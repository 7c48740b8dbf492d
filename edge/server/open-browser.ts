/** Opens an address in the user's browser where there is one; says whether it tried. Never a reason to stop. */
import { spawn } from "node:child_process";

type Machine = { readonly platform: NodeJS.Platform; readonly environment: NodeJS.ProcessEnv };

export function openBrowser(
  url: string,
  machine: Machine = { platform: process.platform, environment: process.env },
): boolean {
  const command = browserCommand(url, machine);
  if (command === null) return false;
  const [program, ...parameters] = command;
  const child = spawn(program, parameters, { stdio: "ignore", detached: true });
  // No such program: the address is printed anyway, so there is nothing to say.
  child.on("error", () => {});
  child.unref();
  return true;
}

/** null where nobody would see it: a build machine, or no display. */
export function browserCommand(url: string, { platform, environment }: Machine): readonly [string, ...string[]] | null {
  if (environment.CI !== undefined && environment.CI !== "") return null;
  if (platform === "darwin") return ["open", url];
  if (platform === "win32") return ["cmd", "/c", "start", '""', url];
  const display = environment.DISPLAY ?? environment.WAYLAND_DISPLAY ?? "";
  return display === "" ? null : ["xdg-open", url];
}
