// DXF files written by ezdxf, a library that is not ours, with what it says they draw: every line flattened to a hair. One
// process of Debian's Python for all of them.
import { spawnSync } from "node:child_process";

/** One file, and its lines as ezdxf sees them, in the file's units, y up. */
export interface WrittenDxf {
  readonly dxf: string;
  readonly lines: readonly (readonly (readonly [number, number])[])[];
}

/** Runs scripts that each fill `msp`, the space of a drawing `doc` in mm; lines come back with blocks resolved. */
export const writtenByEzdxf = (scripts: readonly (readonly [string, string])[]): ReadonlyMap<string, WrittenDxf> => {
  const { status, stdout, stderr } = spawnSync("/usr/bin/python3", ["-c", writer], {
    input: JSON.stringify(scripts),
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (status !== 0) throw new Error(stderr);
  return new Map(JSON.parse(stdout));
};

const writer = `
import io, json, sys, ezdxf
from ezdxf import path

def gather(entities, lines):
    for e in entities:
        if e.dxftype() == "INSERT":
            for one in e.multi_insert():
                gather(one.virtual_entities(), lines)
        elif e.dxftype() in ("ARC", "CIRCLE", "ELLIPSE", "SPLINE"):
            # By their own formulas; as paths ezdxf takes a cubic for a quarter of a circle, which is off by 0.03 %.
            lines.append([(p[0], p[1]) for p in e.flattening(0.0005)])
        else:
            lines.append([(p.x, p.y) for p in path.make_path(e).flattening(0.0005, segments=16)])
    return lines

written = []
for name, script in json.load(sys.stdin):
    doc = ezdxf.new("R2000")
    doc.header["$INSUNITS"] = 4
    msp = doc.modelspace()
    exec(script, {"doc": doc, "msp": msp})
    out = io.StringIO()
    doc.write(out)
    written.append((name, {"dxf": out.getvalue(), "lines": gather(msp, [])}))
print(json.dumps(written))
`;
