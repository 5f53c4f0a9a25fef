import { compiledIn } from "./compiled.ts";

// What the shell starts: a few lines, so that Node has next to nothing to compile before the kept code is there.
compiledIn(__dirname).run();
