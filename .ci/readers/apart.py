#!/usr/bin/python3
"""Read drawings of sheets with ezdxf and measure them with shapely, a line of
JSON a file: how far apart the parts are, and how far from the edge.

Usage: apart.py FILE...

It decides nothing: the tests compare its figures with the batch. Arcs are
flattened within 0.001 mm. Needs Debian's python3-ezdxf and python3-shapely.
"""
import json
import sys

import ezdxf
from ezdxf.path import make_path
from shapely.geometry import Polygon


def polygons(doc, prefix):
    out = []
    for e in doc.modelspace():
        if e.dxf.layer.startswith(prefix) and e.dxftype() in ("LWPOLYLINE", "POLYLINE", "CIRCLE"):
            out.append(Polygon([(v.x, v.y) for v in make_path(e).flattening(0.001)]))
    return out


for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    stock = polygons(doc, "STOCK")
    parts = polygons(doc, "PROFILE")
    least = margin = None
    overlap = 0.0
    for i, p in enumerate(parts):
        m = p.distance(stock[0].exterior) if p.within(stock[0]) else -1.0
        margin = m if margin is None else min(margin, m)
        for q in parts[:i]:
            d = p.distance(q)
            least = d if least is None else min(least, d)
            overlap += p.intersection(q).area
    print(json.dumps({
        "stocks": len(stock),
        "stock": list(stock[0].bounds) if stock else [],
        "parts": len(parts),
        "valid": all(p.is_valid for p in parts),
        "area": sum(p.area for p in parts),
        "least": least,
        "margin": margin,
        "overlap": overlap,
    }))
