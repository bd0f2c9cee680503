/** The header that has a file saved under `name`: a plain name for old readers, the whole one beside it (RFC 6266). */
export function attachment(name: string): string {
  return `attachment; filename="${name.replaceAll(/[^A-Za-z0-9 ._-]/g, "_")}"; filename*=${encodedName(name)}`;
}

/** A name in the form that RFC 8187 gives to text in headers. */
export function encodedName(name: string): string {
  const escaped = (mark: string) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`;
  return `UTF-8''${encodeURIComponent(name).replaceAll(/['()*]/g, escaped)}`;
}
