import fc from "fast-check";
import { expect, it } from "vitest";
import type { ValueNode } from "../../grammar/syntax.ts";
import { Values } from "../../grammar/values.ts";

const ROLES = ["items", "at", "by", "with", "note"];

it("The values of a statement answer as a map does, whatever is put in and taken out", () => {
  const step = fc.record({ role: fc.constantFrom(...ROLES), start: fc.nat(9), goes: fc.boolean() });
  fc.assert(
    fc.property(fc.array(step), (steps) => {
      const values = new Values();
      const map = new Map<string, ValueNode>();
      for (const { role, start, goes } of steps) {
        const node: ValueNode = { kind: "flag", start, end: start };
        for (const each of [values, map]) {
          if (goes) each.delete(role);
          else each.set(role, node);
        }
        expect([...values]).toEqual([...map]);
        expect(values.size).toBe(map.size);
        for (const asked of ROLES) {
          expect(values.get(asked)).toBe(map.get(asked));
          expect(values.has(asked)).toBe(map.has(asked));
        }
      }
    }),
  );
});
