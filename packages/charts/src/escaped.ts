const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Whether there is anything to escape or leave out; long paths pass at once. */
const SUSPECT = /[^ !#-%'-;=?-~\u00a0-\ud7ff\ue000-\ufffd]/;

/**
 * A text as XML and HTML hold it, between tags or in an attribute in double quotes; signs that steer become spaces, and what XML
 * 1.0 forbids besides is left out.
 */
export const escaped = (text: string): string =>
  SUSPECT.test(text)
    ? text
        .replace(/\p{Cc}/gu, ' ')
        .replace(/[\ufffe\uffff]|\p{Surrogate}/gu, '')
        .replace(/[&<>"]/gu, (sign) => ESCAPES[sign]!)
    : text;
