export { type AppOptions, buildApp } from './app.ts';
export { PortTaken, type RunningServer, startServer } from './start-server.ts';
