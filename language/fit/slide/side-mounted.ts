import type { BoxModel } from "../../derive/model.ts";

/** Whether the box runs on slides at its sides, which is so where nothing else is said. */
export function isSideMounted({ slides }: BoxModel): boolean {
  return (slides.block.mount?.value ?? "side") === "side";
}

export function isUnderMounted({ slides }: BoxModel): boolean {
  return slides.block.mount?.value === "under";
}
