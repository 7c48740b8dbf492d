"""The algebra of the tally in NumPy, on arrays written by speed/findings.ts: prints seconds and ln evidence ratios as JSON.

Q = R^-1 - R^-1 a a' R^-1 / (a' R^-1 a), P = Q - Q C Q by regions, H = I + Phi' P Phi; <x, y> = x'Py - (Phi'Px)' H^-1 (Phi'Py);
ln evidence of a shift against none = <e, x> - <x, x>/2.
"""
import json
import sys
import time

import numpy as np

with open(sys.argv[1]) as f:
    m = json.load(f)
rounds = int(sys.argv[2])
K, W, B, R = m["points"], m["witnesses"], m["columns"], m["regions"]
y = np.array(m["y"]).reshape(K, W)
present = np.array(m["present"], bool).reshape(K, W)
errors = np.array(m["errors"]).reshape(K, W, W)
D = np.array(m["discrepancy"])
region = np.array(m["region"])
basis = np.array(m["basis"]).reshape(K, W, B)
var = np.array([s["variance"] for s in m["standing"]])
rows = np.array([s["basis"] for s in m["standing"]]).reshape(-1, B)
read = np.array([s["reading"] for s in m["standing"]])
shifts = np.array([s["witnesses"] for s in m["shifts"]]).reshape(-1, K, W)
stood = np.array([s["standing"] for s in m["shifts"]]).reshape(-1, len(read))


def algebra():
    both = present[:, :, None] & present[:, None, :]
    r = np.where(both, errors, 0.0) + np.where(~present[:, :, None] & np.eye(W, dtype=bool), 1.0, 0.0)
    inv = np.where(both, np.linalg.inv(r), 0.0)
    ra = inv @ np.ones(W)
    s = ra.sum(1)
    q = inv - ra[:, :, None] * ra[:, None, :] / np.where(s > 0, s, 1)[:, None, None]
    q[present.sum(1) < 2] = 0.0
    sums = np.zeros((R, W, W))
    np.add.at(sums, region, q)
    root = np.sqrt(D)
    c = root[:, None] * np.linalg.inv(np.eye(W) + root[:, None] * sums * root) * root

    def apply(x):
        qx = np.einsum("kpq,kq...->kp...", q, x)
        by = np.zeros((R,) + qx.shape[1:])
        np.add.at(by, region, qx)
        cb = np.einsum("rpq,rq...->rp...", c, by)
        return qx - np.einsum("kpq,kq...->kp...", q, cb[region])

    h = np.eye(B) + np.einsum("kpb,kpc->bc", basis, apply(basis)) + (rows.T / var) @ rows
    low = np.linalg.cholesky(h)
    x = np.concatenate([np.where(present, y, 0.0)[None], shifts]).transpose(1, 2, 0)
    st = np.concatenate([read[None], stood]).T
    px = apply(x)
    z = np.linalg.solve(low, np.einsum("kpb,kpn->bn", basis, px) + rows.T @ (st / var[:, None]))
    flat = x.reshape(K * W, -1)
    gram = flat.T @ px.reshape(K * W, -1) + (st / var[:, None]).T @ st - z.T @ z
    return gram[0, 1:] - 0.5 * np.diag(gram)[1:]


ratios = algebra()
seconds = min(
    (lambda start: (algebra(), time.perf_counter() - start)[1])(time.perf_counter()) for _ in range(rounds)
)
print(json.dumps({"seconds": seconds, "ratios": ratios.tolist(), "version": np.__version__}))
