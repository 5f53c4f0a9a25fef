/**
 * What writes PDF is large and seldom wanted: a bundle of its own, which others find beside theirs and load when papers
 * are. A plugin for esbuild.
 */
export const papersApart = {
  name: "papers-apart",
  setup(build) {
    build.onResolve({ filter: /\/pdf\/paper-files\.ts$/ }, ({ kind }) =>
      kind === "dynamic-import" ? { path: "./papers.cjs", external: true } : undefined,
    );
  },
};
