/** A panel, and what decides what it shows. */
export interface Shown<Panel, Controller> {
  readonly panel: Panel;
  readonly controller: Controller;
}

/** Which panel is the one rod of the window. */
export interface OneRod<Panel, Controller> {
  current(): Shown<Panel, Controller> | undefined;
  /** Makes a panel the rod. */
  take(panel: Panel): Controller;
  /**
   * A panel of the last time is there again, and takes the place of the rod there is. What it showed has to be found
   * first; a rod that is opened meanwhile was asked for, and stays in its stead.
   */
  revive(panel: Panel, findFile: () => Promise<string | undefined>): Promise<void>;
  /** The panel is gone. */
  closed(panel: Panel): void;
}

/** `control` gives a panel what decides what it shows. */
export function createOneRod<Panel extends { dispose(): void }, Controller extends { open(file: string): void }>(
  control: (panel: Panel) => Controller,
): OneRod<Panel, Controller> {
  let current: Shown<Panel, Controller> | undefined;

  function take(panel: Panel): Controller {
    const controller = control(panel);
    current = { panel, controller };
    return controller;
  }

  return {
    current: () => current,
    take,
    revive: async (panel, findFile) => {
      const before = current;
      const file = await findFile();
      if (current !== undefined && current !== before) return panel.dispose();
      before?.panel.dispose();
      const controller = take(panel);
      if (file !== undefined) controller.open(file);
    },
    closed: (panel) => {
      if (current?.panel === panel) current = undefined;
    },
  };
}
