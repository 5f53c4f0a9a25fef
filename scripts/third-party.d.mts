export interface RuntimePackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string | undefined;
  readonly path: string;
  readonly hasInstallScript: boolean;
  readonly text: string | undefined;
}
export const plainLicences: readonly string[];
export function runtimePackages(): readonly RuntimePackage[];
export function thirdPartyText(): string;
