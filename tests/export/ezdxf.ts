// DXF files read by ezdxf, a reader that is not ours, in one process of Debian's Python for all of them.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Whether this machine has the reader. */
export const hasEzdxf = spawnSync("/usr/bin/python3", ["-c", "import ezdxf"]).status === 0;

export interface ReadEntity {
  readonly type: string;
  readonly layer: string;
  readonly closed: boolean;
  readonly points: readonly (readonly [number, number])[];
  readonly text: string;
  /** Of a point: 39 and 50. */
  readonly thickness: number;
  readonly angle: number;
}

export interface ReadDxf {
  readonly version: string;
  readonly units: number;
  readonly measurement: number;
  readonly errors: readonly string[];
  readonly layers: readonly string[];
  readonly entities: readonly ReadEntity[];
  readonly blocks: Readonly<Record<string, readonly ReadEntity[]>>;
  /** Of the whole drawing, blocks where they are inserted: left, bottom, right, top. */
  readonly extents: readonly number[];
}

/** These texts as files, read and audited. */
export const readByEzdxf = (files: ReadonlyMap<string, string>): ReadonlyMap<string, ReadDxf> => {
  const folder = mkdtempSync(join(tmpdir(), "chalkline-dxf-"));
  try {
    const paths = [...files].map(([name, text], index) => {
      const path = join(folder, `${index}.dxf`);
      writeFileSync(path, text);
      return [name, path] as const;
    });
    const { status, stdout, stderr } = spawnSync("/usr/bin/python3", ["-c", reader, JSON.stringify(paths)], {
      encoding: "utf8",
      maxBuffer: 1 << 28,
    });
    if (status !== 0) throw new Error(stderr);
    return new Map(JSON.parse(stdout));
  } finally {
    rmSync(folder, { recursive: true });
  }
};

const reader = `
import sys, json, ezdxf
from ezdxf import bbox

def entity(e):
    kind = e.dxftype()
    points, closed, text, thickness, angle = [], False, "", 0, 0
    if kind == "LWPOLYLINE":
        points, closed = [(p[0], p[1]) for p in e.get_points("xy")], e.closed
    elif kind == "POLYLINE":
        points, closed = [(v.dxf.location.x, v.dxf.location.y) for v in e.vertices], e.is_closed
    elif kind == "LINE":
        points = [(p.x, p.y) for p in (e.dxf.start, e.dxf.end)]
    elif kind == "POINT":
        points = [(e.dxf.location.x, e.dxf.location.y)]
        thickness, angle = e.dxf.get("thickness", 0), e.dxf.get("angle", 0)
    elif kind == "INSERT":
        points, text = [(e.dxf.insert.x, e.dxf.insert.y)], e.dxf.name
    elif kind == "TEXT":
        # As a program shows it: first the letters written as \\U+XXXX, then %% and ^.
        e.dxf.text = ezdxf.decode_dxf_unicode(e.dxf.text)
        points, text = [(e.dxf.insert.x, e.dxf.insert.y)], e.plain_text()
    return {"type": kind, "layer": e.dxf.layer, "closed": closed, "points": points, "text": text,
            "thickness": thickness, "angle": angle}

read = []
for name, path in json.loads(sys.argv[1]):
    doc = ezdxf.readfile(path)
    lines = [e for e in doc.modelspace() if e.dxftype() != "TEXT"]
    box = bbox.extents(lines)
    found = {
        "version": doc.dxfversion,
        "units": doc.header.get("$INSUNITS", 0),
        "measurement": doc.header.get("$MEASUREMENT", 0),
        "layers": [layer.dxf.name for layer in doc.layers],
        "entities": [entity(e) for e in doc.modelspace()],
        "blocks": {b.name: [entity(e) for e in b] for b in doc.blocks if not b.name.startswith("*")},
        "extents": [box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y] if box.has_data else [],
    }
    # Last, as an audit mends what it finds.
    found["errors"] = [error.message for error in doc.audit().errors]
    read.append((name, found))
print(json.dumps(read))
`;
