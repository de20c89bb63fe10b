#!/usr/bin/env python3
"""Design checks on the Lansing Woods map (2251 trees, 924 ft x 924 ft = 19.6 acres, species groups, no diameters) and
on longleaf trees of 5 inches and more.  Usage: python3 lansing_design.py lansing.csv longleaf.csv > lansing_design.json
"""
import sys, json, math, csv
import numpy as np
from scipy import stats
rng = np.random.default_rng(77001)
rows = [r for r in csv.DictReader(l for l in open(sys.argv[1]) if not l.startswith('#'))]
X = np.array([float(r['x_ft']) for r in rows]); Y = np.array([float(r['y_ft']) for r in rows]); SP = np.array([r['species'] for r in rows])
SIDE = 924.0; ACRES = SIDE*SIDE/43560
groups = {g: SP == g for g in ('blackoak', 'hickory', 'maple', 'misc', 'redoak', 'whiteoak')}
groups['oaks'] = np.char.find(SP, 'oak') >= 0; groups['all'] = np.ones(len(SP), bool)
out = dict(census={g: dict(n=int(m.sum()), tpa=m.sum()/ACRES) for g, m in groups.items()})

def exact_sd(xs, ys, r, w, side):
    e2 = 0.0
    for a in range(0, len(xs), 500):
        dx = np.abs(xs[a:a+500,None]-xs); dx = np.minimum(dx, side-dx); dy = np.abs(ys[a:a+500,None]-ys); dy = np.minimum(dy, side-dy)
        c = np.hypot(dx, dy); c = c[c < 2*r]
        e2 += (2*r*r*np.arccos(np.clip(c/(2*r), 0, 1))-.5*c*np.sqrt(np.maximum(4*r*r-c*c, 0))).sum()
    m = len(xs)*w*math.pi*r*r/side**2
    return m, math.sqrt(w*w*e2/side**2-m*m)

def tally(px, py, r):
    res = {g: np.empty(len(px)) for g in groups}
    for a in range(0, len(px), 1000):
        dx = np.abs(px[a:a+1000,None]-X); dx = np.minimum(dx, SIDE-dx); dy = np.abs(py[a:a+1000,None]-Y); dy = np.minimum(dy, SIDE-dy)
        c = (dx*dx+dy*dy <= r*r)
        for g, m in groups.items(): res[g][a:a+1000] = c[:, m].sum(1)
    return res

out['fixed'] = {}
for nm, ac in (('1/10', .1), ('1/20', .05), ('1/100', .01)):
    r = math.sqrt(ac*43560/math.pi); N = 30000; z = tally(rng.uniform(0, SIDE, N), rng.uniform(0, SIDE, N), r); o = {}
    for g, m in groups.items():
        mean, sd = exact_sd(X[m], Y[m], r, 1/ac, SIDE); v = z[g]/ac; p0 = float((v == 0).mean())
        e = dict(mean=mean, exact_sd=sd, cv_pct=100*sd/mean, mc_mean=v.mean(), mc_sd=v.std(ddof=1), p_zero=p0, mean_if_zero_plots_dropped=v[v > 0].mean())
        for n in (10, 20):
            q = v[:N//n*n].reshape(-1, n); mm = q.mean(1); se = q.std(1, ddof=1)/math.sqrt(n)
            e['cover95_n%d' % n] = float((np.abs(mm-mean) <= stats.t.ppf(.975, n-1)*se).mean()); e['all_zero_samples_n%d' % n] = float((mm == 0).mean())
        o[g] = e
    out['fixed'][nm] = o
# stocking: share of 1/100-acre plots holding at least one oak; Wald and Wilson interval coverage at n = 20, 50
r = math.sqrt(.01*43560/math.pi); N = 100000; st = (tally(rng.uniform(0, SIDE, N), rng.uniform(0, SIDE, N), r)['oaks'] > 0).astype(float); p = st.mean(); out['stocking_oak_1_100'] = dict(p=p, mc_se=math.sqrt(p*(1-p)/N))
for n in (20, 50):
    k = st[:N//n*n].reshape(-1, n).sum(1); ph = k/n; z = stats.norm.ppf(.975); t = stats.t.ppf(.975, n-1)
    wald = np.abs(ph-p) <= t*np.sqrt(ph*(1-ph)/(n-1)); c = (ph+z*z/2/n)/(1+z*z/n); h = z/(1+z*z/n)*np.sqrt(ph*(1-ph)/n+z*z/4/n/n)
    out['stocking_oak_1_100']['n%d' % n] = dict(wald_t=float(wald.mean()), wilson=float((np.abs(c-p) <= h).mean()), reps=len(k))
# longleaf, trees of 5 in. and more, BAF 10
d = np.genfromtxt(sys.argv[2], delimiter=',', comments='#'); d = d[~np.isnan(d).any(axis=1)]; D = d[:,2]/2.54; k = D >= 5-1e-9; x, y, D = d[k,0], d[k,1], D[k]
K = math.pi/576; S = 200.0; AC = S*S/(43560*.3048**2); BA = K*D*D; R = D*2.75*.3048; N = 150000; zb = np.empty(N); zt = np.empty(N)
for a in range(0, N, 5000):
    px = rng.uniform(0, S, 5000); py = rng.uniform(0, S, 5000); dx = np.abs(px[:,None]-x); dx = np.minimum(dx, S-dx); dy = np.abs(py[:,None]-y); dy = np.minimum(dy, S-dy)
    c = (dx*dx+dy*dy <= R*R); zb[a:a+5000] = 10.*c.sum(1); zt[a:a+5000] = c @ (10/BA)
o = dict(n_trees=int(k.sum()), census_ba=BA.sum()/AC, census_tpa=len(D)/AC, mc_ba=zb.mean(), mc_ba_sd=zb.std(ddof=1), mc_tpa=zt.mean(), mc_tpa_sd=zt.std(ddof=1), census_qmd=math.sqrt((D*D).mean()))
for n in (10, 15, 30):
    for nm, v, tr in (('ba', zb, o['census_ba']), ('tpa', zt, o['census_tpa'])):
        q = v[:N//n*n].reshape(-1, n)[:10000]; mm = q.mean(1); se = q.std(1, ddof=1)/math.sqrt(n); o['cover95_%s_n%d' % (nm, n)] = float((np.abs(mm-tr) <= stats.t.ppf(.975, n-1)*se).mean())
    qb = zb[:N//n*n].reshape(-1, n).mean(1); qt = zt[:N//n*n].reshape(-1, n).mean(1); qm = np.sqrt(qb[qt > 0]/(K*qt[qt > 0])); o['qmd_mean_n%d' % n] = qm.mean(); o['qmd_sd_n%d' % n] = qm.std(ddof=1)
out['longleaf_ge5_baf10'] = o
json.dump(out, sys.stdout, indent=1, default=float)
