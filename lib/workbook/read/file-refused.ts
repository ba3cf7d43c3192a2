/** Why a file was not read. */
export type FileRefusedCode =
  | "empty"
  | "tooLarge"
  | "encryptedOrOldFormat"
  | "openDocument"
  | "notASpreadsheet"
  | "damaged"
  | "tooManyRows"
  | "tooManyCells"
  | "textTooLong"
  | "forbiddenXml"
  | "tooSlow"
  | "tooMuchMemory";

/** A file that is not read, with what to do about it in the message. Nothing of it is used. */
export class FileRefused extends Error {
  readonly code: FileRefusedCode;
  constructor(code: FileRefusedCode, message: string) {
    super(message);
    this.name = "FileRefused";
    this.code = code;
  }
}
