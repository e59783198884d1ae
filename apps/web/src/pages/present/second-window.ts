/** What browsers that know of other screens give of one. */
interface ScreenDetails {
  currentScreen: unknown;
  screens: { availLeft: number; availTop: number; availWidth: number; availHeight: number }[];
}

/** Where another screen lies, as `window.open` takes it; '' where there is none or the browser does not say. */
async function otherScreen(): Promise<string> {
  const ask = (window as { getScreenDetails?: () => Promise<ScreenDetails> }).getScreenDetails;
  if (ask === undefined || !(screen as { isExtended?: boolean }).isExtended) return '';
  const details = await ask.call(window).catch(() => null);
  const other = details?.screens.find((one) => one !== details.currentScreen);
  if (other === undefined) return '';
  return `left=${other.availLeft},top=${other.availTop},width=${other.availWidth},height=${other.availHeight}`;
}

/** Opens the second window, on another screen where the browser knows one; `false`: the browser held it back. */
export async function openSecondWindow(trialId: string): Promise<boolean> {
  const place = await otherScreen();
  const address = `/trials/${encodeURIComponent(trialId)}/present?follow=1`;
  return (
    window.open(address, `pullbook-second-${trialId}`, `popup,${place || 'width=1280,height=720'}`) !== null
  );
}
