import { oneChangedByte } from './tampering.js';

// All 250 places are changed among the outside checks, which may take longer.
oneChangedByte(0.2);
