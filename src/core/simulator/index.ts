/** What others may use of the simulator. */
export { createSimulatedDevice, type SentBytes, type SimulatedDevice } from './create-simulated-device.ts';
export { WB_150, WB_212 } from './demo-assemblies.ts';
export { NORTH, SOUTH } from './demo-presses.ts';
export { DEMO_SCENARIO } from './demo-scenario.ts';
export { demoTrialScenario } from './demo-trial-scenario.ts';
export type { Scenario } from './Scenario.ts';
export type { ShippedScenario } from './ShippedScenario.ts';
export { shippedRecordings } from './shipped-recordings.ts';
export { SHIPPED_SCENARIOS } from './shipped-scenarios.ts';
export { simulateRecording } from './simulate-recording.ts';
export { simulateRun } from './simulate-run.ts';
