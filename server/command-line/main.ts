/** The `cotter` program: little else than how the rest of it is loaded. */
import { loadWithCompiledCode } from "./compiled-code.ts";
import { setEngine } from "./engine-settings.ts";

setEngine();
loadWithCompiledCode();
void import("./program.ts");
