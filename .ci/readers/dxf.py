#!/usr/bin/python3
"""Read DXF files with ezdxf and print what each holds, a line of JSON a file.

Usage: dxf.py FILE...

It decides nothing: it says what an outside reader sees, and the tests compare
those figures with the plan. Needs Debian's python3-ezdxf (0.18).
"""
import json
import math
import sys

import ezdxf
from ezdxf.math import bulge_center, bulge_radius


def arc_segment(p, q, b):
    """Area between chord and arc: r^2 (s - sin s) / 2."""
    if b == 0:
        return 0.0
    r = bulge_radius(p, q, b)
    s = 4 * math.atan(b)
    return r * r * (s - math.sin(s)) / 2


def length(p, q, b):
    if b == 0:
        return math.dist(p, q)
    return bulge_radius(p, q, b) * 4 * abs(math.atan(b))


def extreme(p, q, b):
    """The ends of a segment and, of an arc, its outermost points."""
    pts = [p, q]
    if b:
        c = bulge_center(p, q, b)
        r = bulge_radius(p, q, b)
        for dx, dy in ((r, 0), (0, r), (-r, 0), (0, -r)):
            e = (c[0] + dx, c[1] + dy)
            side = (q[0] - p[0]) * (e[1] - p[1]) - (q[1] - p[1]) * (e[0] - p[0])
            if (side < 0) == (b > 0):
                pts.append(e)
    return pts


def contour(vertices, closed):
    n = len(vertices)
    area = total = 0.0
    pts = []
    for i, (x, y, b) in enumerate(vertices):
        if not closed and i == n - 1:
            break
        u, v, _ = vertices[(i + 1) % n]
        area += (x * v - u * y) / 2 + arc_segment((x, y), (u, v), b)
        total += length((x, y), (u, v), b)
        pts += extreme((x, y), (u, v), b)
    xs, ys = [p[0] for p in pts], [p[1] for p in pts]
    return {
        "vertices": [list(v) for v in vertices],
        "closed": closed,
        "repeats_first": n > 1 and vertices[0][:2] == vertices[-1][:2],
        "area": area,
        "length": total,
        "box": [min(xs), min(ys), max(xs), max(ys)],
    }


def read(path):
    doc = ezdxf.readfile(path)
    auditor = doc.audit()
    layers = {}
    for l in doc.layers:
        layers[l.dxf.name] = {
            "colour": l.dxf.color, "line": l.dxf.linetype,
            "contours": [], "circles": [], "lines": [], "texts": [],
        }
    other = {}
    for e in doc.modelspace():
        kind = e.dxftype()
        # An entity on a layer that the table lacks is an entry of its own.
        at = layers.setdefault(e.dxf.layer, {
            "undeclared": True, "contours": [], "circles": [], "lines": [], "texts": []})
        if kind == "LWPOLYLINE":
            at["contours"].append(contour([tuple(v) for v in e.get_points("xyb")], e.closed))
        elif kind == "POLYLINE":
            vs = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0.0)) for v in e.vertices]
            at["contours"].append(contour(vs, e.is_closed))
            if any(v.dxf.layer != e.dxf.layer for v in e.vertices):
                other["VERTEX on another layer"] = other.get("VERTEX on another layer", 0) + 1
        elif kind == "CIRCLE":
            c = e.dxf.center
            at["circles"].append([c.x, c.y, e.dxf.radius])
        elif kind == "LINE":
            a, b = e.dxf.start, e.dxf.end
            at["lines"].append([a.x, a.y, b.x, b.y])
        elif kind == "TEXT":
            p = e.dxf.insert
            # The library leaves \\U+XXXX to the caller.
            e.dxf.text = ezdxf.decode_dxf_unicode(e.dxf.text)
            at["texts"].append({
                "text": e.plain_text(), "at": [p.x, p.y], "height": e.dxf.height,
                "angle": e.dxf.rotation, "middle": e.dxf.halign == 1,
            })
        else:
            other[kind] = other.get(kind, 0) + 1
    h = doc.header
    print(json.dumps({
        "version": doc.dxfversion,
        "units": h.get("$INSUNITS", None) if doc.dxfversion != "AC1009" else None,
        "measurement": h.get("$MEASUREMENT", None) if doc.dxfversion != "AC1009" else None,
        "min": list(h.get("$EXTMIN", ())), "max": list(h.get("$EXTMAX", ())),
        "errors": [e.message for e in auditor.errors],
        "fixes": [e.message for e in auditor.fixes],
        "layers": layers,
        "other": other,
    }, sort_keys=True))


if len(sys.argv) < 2:
    sys.exit(__doc__)
for name in sys.argv[1:]:
    read(name)
