import { oneChangedByte } from '../demo/tampering.js';

oneChangedByte(1);
