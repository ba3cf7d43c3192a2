import { escapeXml } from "../xml/escape.js";
import { declaration, packageRelationships, relationshipsOfDocument } from "../xml/namespaces.js";

/** Kinds of parts that the finishing pass adds. */
export type AddedKind = "table" | "drawing" | "chart" | "image";

/** Relationships of one part, numbered in the order they are asked for. */
export class Relationships {
  private readonly lines: string[] = [];

  /** Adds one and gives its id. */
  add(kind: AddedKind, target: string): string {
    const id = `rId${this.lines.length + 1}`;
    this.lines.push(
      `<Relationship Id="${id}" Type="${relationshipsOfDocument}/${kind}" Target="${escapeXml(target)}"/>`,
    );
    return id;
  }

  get isEmpty(): boolean {
    return this.lines.length === 0;
  }

  toXml(): string {
    return `${declaration}<Relationships xmlns="${packageRelationships}">${this.lines.join("")}</Relationships>`;
  }
}
