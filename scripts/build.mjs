// npm run build: the command line and the app, if the sources changed.
import { ensureBuilt, ensurePackages, requireNode } from "./setup.mjs";

requireNode();
ensurePackages({ dev: false });
ensureBuilt();
