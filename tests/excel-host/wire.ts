import { HostError, type HostObject, isHostObject, unknownMember } from "./host-object.js";

interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly number[];
}
interface ObjectPath {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}
export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}
export interface RequestBody {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

const pathType = { root: 1, method: 3, property: 4, indexer: 5, reference: 6 } as const;
const actionType = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5, ensure: 6 } as const;

/** Carries out the actions of one request on the model, in order, up to the first that fails. */
export function carryOut(
  body: RequestBody,
  model: { readonly root: HostObject; readonly references: Map<string, HostObject>; readonly reference: () => string },
  before: (action: Action, index: number) => void,
) {
  const found = new Map<number, HostObject | null>();
  const results: { ActionId: number; Value: unknown }[] = [];

  const given = (info: ArgumentInfo | undefined): unknown[] => {
    const values = [...(info?.Arguments ?? [])];
    info?.ReferencedObjectPathIds?.forEach((id, index) => {
      if (id) values[index] = objectAt(id);
    });
    return values;
  };
  const objectAt = (id: number): HostObject | null => {
    const known = found.get(id);
    if (known !== undefined) return known;
    const object = resolve(id);
    found.set(id, object);
    return object;
  };
  const resolve = (id: number): HostObject | null => {
    const path = body.ObjectPaths[id];
    if (path === undefined) throw new HostError("GeneralException", `no path ${id}`);
    if (path.ObjectPathType === pathType.root) return model.root;
    if (path.ObjectPathType === pathType.reference) {
      const object = model.references.get(path.Name);
      if (object === undefined) throw new HostError("InvalidReference", `the reference ${path.Name} was given back`);
      return object;
    }
    const parent = path.ParentObjectPathId ? objectAt(path.ParentObjectPathId) : null;
    if (parent === null) return null;
    if (path.ObjectPathType === pathType.property) {
      const child = parent.child?.[path.Name];
      if (child === undefined) throw unknownMember(parent.kind, `child ${path.Name}`);
      return child();
    }
    const name = path.ObjectPathType === pathType.indexer ? "GetItem" : path.Name;
    const answer = callOn(parent, name, given(path.ArgumentInfo));
    if (answer !== null && !isHostObject(answer)) throw new HostError("GeneralException", `${name} gave no object`);
    return answer;
  };

  for (const [index, action] of body.Actions.entries()) {
    try {
      before(action, index);
      results.push({ ActionId: action.Id, Value: carryOutOne(action) });
    } catch (error) {
      if (!(error instanceof HostError)) throw error;
      return { results, error: { code: error.code, message: error.message, index } };
    }
  }
  return { results };

  function carryOutOne(action: Action): unknown {
    const type = action.ActionType;
    if (type === actionType.trace || type === actionType.ensure) return null;
    const object = objectAt(action.ObjectPathId);
    if (type === actionType.instantiate) {
      if (object === null) return null;
      if (object.byReference) {
        const reference = model.reference();
        model.references.set(reference, object);
        return { _ReferenceId: reference };
      }
      return object.id === undefined ? {} : { Id: object.id };
    }
    if (type === actionType.query) return object === null ? null : view(object, action.QueryInfo?.Select ?? []);
    if (type === actionType.method && action.Name === "_RemoveReference") {
      model.references.delete(String(action.ArgumentInfo?.Arguments?.[0]));
      return null;
    }
    if (type === actionType.method && action.Name === "_KeepReference") return null;
    if (object === null) throw new HostError("InvalidOperation", `${action.Name} on an object that is not there`);
    if (type === actionType.set) {
      const set = object.set?.[action.Name];
      if (set === undefined) throw unknownMember(object.kind, `settable property ${action.Name}`);
      set(given(action.ArgumentInfo)[0]);
      return null;
    }
    if (type !== actionType.method) throw new HostError("GeneralException", `action type ${type}`);
    const answer = callOn(object, action.Name, given(action.ArgumentInfo));
    return isHostObject(answer) || answer === undefined ? null : answer;
  }
}

function callOn(object: HostObject, name: string, given: readonly unknown[]): unknown {
  const method = object.call?.[name];
  if (method === undefined) throw unknownMember(object.kind, `method ${name}`);
  return method(...given);
}

const wireName = (name: string): string => `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`;

/** What a load brings back. A load that does not name its properties is refused: it costs what nobody asked for. */
function view(object: HostObject, select: readonly string[]): Record<string, unknown> {
  const wanted = select.filter((name) => name !== "isNullObject");
  if (select.length === 0) throw unknownMember(object.kind, "load without names");
  const out: Record<string, unknown> = object.id === undefined ? {} : { Id: object.id };
  const nested = new Map<string, string[]>();
  for (const name of wanted) {
    // The client sends what is asked of a collection's items without naming the items.
    const ofItems = object.items !== undefined && object.get?.[wireName(name)] === undefined;
    const slash = name.indexOf("/");
    if (ofItems || slash >= 0) {
      const head = ofItems ? "items" : name.slice(0, slash);
      const rest = ofItems ? name.replace(/^items\//, "") : name.slice(slash + 1);
      nested.set(head, [...(nested.get(head) ?? []), rest]);
      continue;
    }
    const get = object.get?.[wireName(name)];
    if (get === undefined) throw unknownMember(object.kind, `loadable property ${name}`);
    out[wireName(name)] = get();
  }
  for (const [head, names] of nested) {
    if (head === "items") {
      if (object.items === undefined) throw unknownMember(object.kind, "items");
      out["_Items"] = object.items().map((item) => view(item, names));
      continue;
    }
    const child = object.child?.[wireName(head)];
    if (child === undefined) throw unknownMember(object.kind, `child ${head}`);
    const one = child();
    out[wireName(head)] = one === null ? null : view(one, names);
  }
  return out;
}
