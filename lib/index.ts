export { InputError, type InputErrorFacts } from "./problems/input-error.js";
export type { Place, Query } from "./problems/query.js";
export { type Cents, roundCents } from "./quantities/money.js";
export type { Ohms, OhmsReading } from "./quantities/ohms-reading.js";
