export interface BundleTarget {
  readonly out: string;
  readonly platform: "node" | "browser";
  readonly speaksProtocol?: boolean;
  readonly isWebview?: boolean;
}

/** The part of esbuild's metafile that the check reads. */
export interface BundleContents {
  readonly inputs: Readonly<Record<string, { readonly imports: readonly { readonly path: string }[] }>>;
  readonly outputs: Readonly<Record<string, unknown>>;
}

export function bundleFaults(metafile: BundleContents, target: BundleTarget): string[];
