#!/usr/bin/env python3
"""Design checks on the longleaf stem map (584 trees, 200 m x 200 m).
Exact parts (no random numbers): single-point variance on the torus by disc overlaps, edge bias by disc-square areas.
Monte Carlo parts: numpy default_rng(seed).  Needs numpy, scipy.  Run time about two minutes on one core.
Usage: python3 longleaf_design.py longleaf.csv > longleaf_design.json
"""
import sys, json, math
import numpy as np
from scipy import stats
AC = 43560*0.3048**2; K = math.pi/576; FT = 0.3048; SIDE = 200.0; AREA = SIDE*SIDE; ACRES = AREA/AC
d = np.genfromtxt(sys.argv[1], delimiter=',', comments='#', skip_header=0)
d = d[~np.isnan(d).any(axis=1)]
X, Y, D = d[:,0], d[:,1], d[:,2]/2.54
assert len(D) == 584
BA = K*D*D
CENS = dict(tpa=len(D)/ACRES, ba=BA.sum()/ACRES)
rng = np.random.default_rng(20240607)

def radius_var(baf):             # metres; exact: R_ft = sqrt(43560/(576 ... )) -> dbh*sqrt(75.625/BAF)
    return D*math.sqrt(75.625/baf)*FT
def radius_fix(acre):
    return np.full(len(D), math.sqrt(acre*43560/math.pi)*FT)

def lens(r1, r2, dd):            # area of intersection of two discs
    out = np.zeros(np.broadcast(r1, r2, dd).shape)
    r1, r2, dd = np.broadcast_arrays(r1, r2, dd)
    inside = dd <= np.abs(r1-r2)
    out[inside] = math.pi*np.minimum(r1, r2)[inside]**2
    m = (~inside) & (dd < r1+r2)
    a, b, c = r1[m], r2[m], dd[m]
    t1 = np.arccos(np.clip((c*c+a*a-b*b)/(2*c*a), -1, 1)); t2 = np.arccos(np.clip((c*c+b*b-a*a)/(2*c*b), -1, 1))
    k = np.sqrt(np.clip((-c+a+b)*(c+a-b)*(c-a+b)*(c+a+b), 0, None))
    out[m] = a*a*t1 + b*b*t2 - 0.5*k
    return out

def torus_exact(R, w):           # w: per-acre contribution of a tallied tree; returns mean, sd of a single-point estimate
    dx = np.abs(X[:,None]-X[None,:]); dx = np.minimum(dx, SIDE-dx)
    dy = np.abs(Y[:,None]-Y[None,:]); dy = np.minimum(dy, SIDE-dy)
    A = lens(R[:,None], R[None,:], np.hypot(dx, dy))
    m = (w*math.pi*R*R).sum()/AREA
    e2 = (w[:,None]*w[None,:]*A).sum()/AREA
    return m, math.sqrt(e2-m*m)

def inside_fraction(R):          # fraction of each inclusion disc inside the square, 1-d quadrature in the angle
    n = 4096; th = (np.arange(n)+0.5)*2*math.pi/n; c, s = np.cos(th), np.sin(th)
    f = np.empty(len(R))
    for i in range(len(R)):
        tx = np.where(c > 0, (SIDE-X[i])/np.maximum(c, 1e-300), np.where(c < 0, X[i]/np.maximum(-c, 1e-300), np.inf))
        ty = np.where(s > 0, (SIDE-Y[i])/np.maximum(s, 1e-300), np.where(s < 0, Y[i]/np.maximum(-s, 1e-300), np.inf))
        r = np.minimum(R[i], np.minimum(tx, ty)); f[i] = (r*r).mean()/R[i]**2
    return f

def counts(px, py, R, mode):     # tree-by-point tally matrix (0/1/2.. for mirage, walkthrough)
    dx = np.abs(px[:,None]-X); dy = np.abs(py[:,None]-Y); R2 = R*R
    if mode == 'torus':
        dx = np.minimum(dx, SIDE-dx); dy = np.minimum(dy, SIDE-dy)
        return (dx*dx+dy*dy <= R2).astype(np.int8)
    if mode == 'none':
        return (dx*dx+dy*dy <= R2).astype(np.int8)
    if mode == 'mirage':         # reflect the point across each side and through each corner, tally again
        c = (dx*dx+dy*dy <= R2).astype(np.int8)
        xs = (px, -px, 2*SIDE-px); ys = (py, -py, 2*SIDE-py)
        for i in range(3):
            for j in range(3):
                if i == 0 and j == 0: continue
                c += ((xs[i][:,None]-X)**2+(ys[j][:,None]-Y)**2 <= R2)
        return c
    if mode == 'walkthrough':    # go from the point through the tree as far again; count twice if that lands outside
        c = (dx*dx+dy*dy <= R2).astype(np.int8)
        ex = 2*X-px[:,None]; ey = 2*Y-py[:,None]
        out = (ex < 0) | (ex > SIDE) | (ey < 0) | (ey > SIDE)
        return c*(1+out)

def field(n, R, W, mode, chunk=4000):   # W: trees x attributes; returns n x attributes
    res = np.empty((n, W.shape[1]))
    for a in range(0, n, chunk):
        m = min(chunk, n-a); px = rng.uniform(0, SIDE, m); py = rng.uniform(0, SIDE, m)
        res[a:a+m] = counts(px, py, R, mode).astype(float) @ W
    return res

out = dict(census=CENS, K=K, acres=ACRES)
designs = {}
for baf in (5, 10, 20):
    R = radius_var(baf); designs['baf%d' % baf] = (R, np.column_stack([np.full(len(D), float(baf)), baf/BA]))
for nm, ac in (('fixed_1_20', .05), ('fixed_1_10', .1), ('fixed_1_5', .2)):
    R = radius_fix(ac); designs[nm] = (R, np.column_stack([BA/ac, np.full(len(D), 1/ac)]))
out['exact_torus'] = {}; out['exact_no_correction'] = {}
for nm, (R, W) in designs.items():
    mb, sb = torus_exact(R, W[:,0]); mt, st = torus_exact(R, W[:,1])
    out['exact_torus'][nm] = dict(ba_mean=mb, ba_sd=sb, ba_cv_pct=100*sb/mb, tpa_mean=mt, tpa_sd=st, tpa_cv_pct=100*st/mt, max_radius_m=float(R.max()))
    f = inside_fraction(R); a = math.pi*R*R
    eb = (W[:,0]*a*f).sum()/AREA; et = (W[:,1]*a*f).sum()/AREA
    out['exact_no_correction'][nm] = dict(ba_mean=eb, ba_bias_pct=100*(eb/CENS['ba']-1), tpa_mean=et, tpa_bias_pct=100*(et/CENS['tpa']-1))
# Monte Carlo: mean, sd under each edge rule (40 000 points)
NMC = 40000; out['mc_points'] = NMC; out['mc'] = {}
for nm in ('baf10', 'baf20', 'fixed_1_10', 'fixed_1_5'):
    R, W = designs[nm]; out['mc'][nm] = {}
    for mode in ('torus', 'mirage', 'walkthrough', 'none'):
        z = field(NMC, R, W, mode); m = z.mean(0); s = z.std(0, ddof=1)
        out['mc'][nm][mode] = dict(ba_mean=m[0], ba_sd=s[0], ba_z=(m[0]-CENS['ba'])/(s[0]/math.sqrt(NMC)),
                                   tpa_mean=m[1], tpa_sd=s[1], tpa_z=(m[1]-CENS['tpa'])/(s[1]/math.sqrt(NMC)), zero_plots_pct=100*float((z[:,0] == 0).mean()))
# CI coverage from a pool of independent torus points (each replicate uses fresh points)
def coverage(z, true, n, reps, conf):
    z = z[:n*reps].reshape(reps, n); m = z.mean(1); se = z.std(1, ddof=1)/math.sqrt(n); t = stats.t.ppf(0.5+conf/2, n-1)
    return dict(reps=reps, mean=float(m.mean()), sd_of_means=float(m.std(ddof=1)), rms_se=float(math.sqrt((se**2).mean())),
                coverage=float((np.abs(m-true) <= t*se).mean()), low_miss=float((m+t*se < true).mean()), high_miss=float((m-t*se > true).mean()))
out['coverage_torus'] = {}
for nm in ('baf10', 'fixed_1_10', 'fixed_1_5'):
    R, W = designs[nm]; z = field(150000, R, W, 'torus'); out['coverage_torus'][nm] = {}
    for n in (5, 10, 15, 30):
        reps = min(10000, 150000//n)
        for conf in (0.90, 0.95):
            out['coverage_torus'][nm]['n%d_%d' % (n, round(conf*100))] = dict(ba=coverage(z[:,0], CENS['ba'], n, reps, conf), tpa=coverage(z[:,1], CENS['tpa'], n, reps, conf))
# Systematic square grid, random start, torus: all starts on a 0.5 m lattice (deterministic)
out['systematic'] = {}
for nm in ('baf10', 'fixed_1_10'):
    R, W = designs[nm]; out['systematic'][nm] = {}
    for g in (3, 4, 5):
        sp = SIDE/g; k = 100; offs = (np.arange(k)+0.5)*sp/k
        gx, gy = np.meshgrid(np.arange(g)*sp, np.arange(g)*sp)
        gx, gy = gx.ravel(), gy.ravel(); n = g*g; means = np.empty((k*k, 2)); ses = np.empty((k*k, 2)); cov = np.zeros(2); t = stats.t.ppf(.975, n-1); q = 0
        for ox in offs:
            px = (gx[None,:]+ox).repeat(k, 0).ravel(); py = (gy[None,:]+offs[:,None]).ravel()
            z = (counts(px, py, R, 'torus').astype(float) @ W).reshape(k, n, 2)
            means[q:q+k] = z.mean(1); ses[q:q+k] = z.std(1, ddof=1)/math.sqrt(n); q += k
        tr = np.array([CENS['ba'], CENS['tpa']]); cv = (np.abs(means-tr) <= t*ses).mean(0)
        ex = out['exact_torus'][nm]
        out['systematic'][nm]['%dx%d' % (g, g)] = dict(n=n, spacing_m=sp, starts=k*k,
            ba=dict(mean=means[:,0].mean(), true_se=means[:,0].std(), srs_true_se=ex['ba_sd']/math.sqrt(n), rms_reported_se=math.sqrt((ses[:,0]**2).mean()), coverage95=cv[0]),
            tpa=dict(mean=means[:,1].mean(), true_se=means[:,1].std(), srs_true_se=ex['tpa_sd']/math.sqrt(n), rms_reported_se=math.sqrt((ses[:,1]**2).mean()), coverage95=cv[1]))
# Stratified: west and east halves, 10 points each, against 20 points anywhere (BAF 10)
R, W = designs['baf10']; reps = 5000; nh = 10
px = rng.uniform(0, SIDE/2, (reps, 2, nh)); px[:,1] += SIDE/2; py = rng.uniform(0, SIDE, (reps, 2, nh)); z = np.empty(reps*2*nh)
fx, fy = px.ravel(), py.ravel()
for a in range(0, len(z), 4000): z[a:a+4000] = counts(fx[a:a+4000], fy[a:a+4000], R, 'torus').sum(1)*10.0
z = z.reshape(reps, 2, nh); mh = z.mean(2); vh = z.var(2, ddof=1)/nh; m = .5*mh.sum(1); v = .25*vh.sum(1)
df = v**2/((.25*vh)**2/(nh-1)).sum(1); half = stats.t.ppf(.975, df)*np.sqrt(v)
out['stratified_halves_baf10'] = dict(reps=reps, n_per_half=nh, mean=m.mean(), true_se=m.std(ddof=1), rms_reported_se=math.sqrt(v.mean()), coverage95=float((np.abs(m-CENS['ba']) <= half).mean()),
    half_means=[float(mh[:,0].mean()), float(mh[:,1].mean())], srs20_true_se=out['exact_torus']['baf10']['ba_sd']/math.sqrt(20))
# Count/measure: BAF 10 at n points, volume only at every 3rd. Test volume function V = exp(-2.35332) dbh^2.19997 (fit to the trees data set, test use only)
V = np.exp(-2.35332)*D**2.19997; vtrue = V.sum()/ACRES; vb = V/BA
reps, n, k = 5000, 30, 3; mi = n//k; res = []; m2 = []
for a in range(reps):
    px = rng.uniform(0, SIDE, n); py = rng.uniform(0, SIDE, n); c = counts(px, py, R, 'torus')
    ba = c.sum(1)*10.0; sub = slice(0, n, k); cm = c[sub]; vol = (cm*vb).sum(1)*10.0; bm = ba[sub]
    if bm.sum() == 0: continue
    B = ba.mean(); r = vol.sum()/bm.sum(); est = B*r
    seB = ba.std(ddof=1)/math.sqrt(n)/B
    e = vol-r*bm; seR = math.sqrt((e@e)/(mi-1)/mi)/bm.mean()/r            # points as the sampling unit
    tv = np.repeat(np.tile(vb, (mi, 1))[cm > 0], cm[cm > 0]); seT = tv.std(ddof=1)/math.sqrt(len(tv))/tv.mean()   # trees as the unit (Bruce)
    p1 = math.sqrt(seB**2+seR**2); p2 = math.sqrt(seB**2+seT**2); p3 = math.sqrt(seB**2+seT**2-seB**2*seT**2)
    s2 = vol.var(ddof=1); dsv = (e@e)/(mi-1)*(1/mi-1/n)+s2/n              # ratio double sampling (Cochran 12.67 form, first order)
    res.append((est, p1*est, p2*est, p3*est, math.sqrt(dsv), len(tv)))
res = np.array(res); t = stats.t.ppf(.975, n-1)
out['count_measure_baf10'] = dict(reps=len(res), n=n, measured_points=mi, true_volume=vtrue, true_vbar=float(V.sum()/BA.sum()), mean=res[:,0].mean(), mc_se_of_mean=res[:,0].std(ddof=1)/math.sqrt(len(res)), true_se=res[:,0].std(ddof=1),
    rms_se=dict(product_point_vbar=math.sqrt((res[:,1]**2).mean()), product_tree_vbar=math.sqrt((res[:,2]**2).mean()), goodman_minus=math.sqrt((res[:,3]**2).mean()), ratio_double_sampling=math.sqrt((res[:,4]**2).mean())),
    coverage95={nm: float((np.abs(res[:,0]-vtrue) <= t*res[:,j]).mean()) for j, nm in ((1, 'product_point_vbar'), (2, 'product_tree_vbar'), (4, 'ratio_double_sampling'))}, mean_measured_trees=res[:,5].mean())
json.dump(out, sys.stdout, indent=1, default=float)
