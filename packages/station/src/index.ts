export { contractVersion } from '@coreward/contract';
