export * from './model.ts';
export { DEMO_SEED, demoScenario } from './scenario.ts';
