/// <reference types="custom-functions-runtime" />
import { associations } from "./generated/associations.js";

/** Gives Excel the functions behind the names of functions.json. Any other page has no custom functions to register. */
export function registerFunctions(): boolean {
  if (typeof CustomFunctions === "undefined") return false;
  for (const [id, implementation] of Object.entries(associations)) CustomFunctions.associate(id, implementation);
  return true;
}

registerFunctions();
