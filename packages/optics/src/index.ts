export { normalCdf, normalQuantile } from './numerics/normal.ts';
export { OutOfRange } from './out-of-range.ts';
export { glassNamed, glassNames } from './glass/glass-named.ts';
export { type ConnectorName, connectorNames, isAngled } from './loss/connector.ts';
