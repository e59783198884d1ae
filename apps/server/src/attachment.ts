/** `Content-Disposition` for a download under a name (RFC 6266: plain name for old readers, UTF-8 one beside it). */
export function attachment(name: string): string {
  const plain = name.replace(/[^\x20-\x7e]|["\\%;]/g, '_');
  const encoded = encodeURIComponent(name.replace(/[\r\n]/g, ' ')).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `attachment; filename="${plain}"; filename*=UTF-8''${encoded}`;
}
