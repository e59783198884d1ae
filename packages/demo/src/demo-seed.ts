/** Of the demo as it is shown. */
export const DEMO_SEED = 20260314;
