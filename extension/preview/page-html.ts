/** What the page is made of; all are addresses as the webview sees them, but the nonce. */
export interface PageParts {
  readonly nonce: string;
  readonly script: string;
  readonly style: string;
  /** Where the webview may load from, `webview.cspSource`. */
  readonly source: string;
}

/** The page once and for all: it runs one script, loads one style sheet and reaches for nothing else. */
export function pageHtml({ nonce, script, style, source }: PageParts): string {
  const policy = `default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="UTF-8">
<meta http-equiv="Content-Security-Policy" content="${escapeAttribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>The rod</title>
<link rel="stylesheet" href="${escapeAttribute(style)}">
</head>
<body>
<div id="rod"></div>
<script nonce="${nonce}" src="${escapeAttribute(script)}"></script>
</body>
</html>`;
}

/** 128 random bits in hexadecimal; good for one page. */
export function createNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function escapeAttribute(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;");
}
