import type { LeavingLook, PublishPage } from '../../api/publish.ts';

/** What every part of the page that makes files goes by. */
export interface Making {
  page: PublishPage;
  /** As it leaves the shop. */
  look: LeavingLook;
  /** As it is looked at here, where everything may be seen. */
  inShop: LeavingLook;
  /** Nothing is held back, or somebody let it leave all the same. */
  mayLeave: boolean;
}
