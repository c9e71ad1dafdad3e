// What a heap holds, by what it is: objects of the program, code that the engine has compiled, room in weak tables.
import { readFileSync } from "node:fs";

/** @param file a heap snapshot of V8; sizes in MB */
export function heapContent(file) {
  const { snapshot, nodes, edges, strings } = JSON.parse(readFileSync(file, "utf8"));
  const { node_fields, node_types, edge_fields, edge_types } = snapshot.meta;
  const [type, name, size, count] = ["type", "name", "self_size", "edge_count"].map((field) =>
    node_fields.indexOf(field),
  );
  const [edgeType, edgeName, to] = ["type", "name_or_index", "to_node"].map((field) =>
    edge_fields.indexOf(field),
  );
  const sizes = { code: 0, tables: 0, objects: 0 };
  const tables = new Set();
  let edge = 0;
  for (let node = 0; node < nodes.length; node += node_fields.length) {
    const isWeak = strings[nodes[node + name]] === "WeakMap";
    for (
      const end = edge + nodes[node + count] * edge_fields.length;
      edge < end;
      edge += edge_fields.length
    ) {
      const isInternal = edge_types[edgeType][edges[edge + edgeType]] === "internal";
      if (isWeak && isInternal && strings[edges[edge + edgeName]] === "table") tables.add(edges[edge + to]);
    }
  }
  for (let node = 0; node < nodes.length; node += node_fields.length) {
    const kind = node_types[type][nodes[node + type]];
    const isEngine = kind === "code" || kind === "hidden" || kind === "object shape";
    const what = isEngine ? "code" : tables.has(node) ? "tables" : "objects";
    sizes[what] += nodes[node + size] / 1024 ** 2;
  }
  return sizes;
}
