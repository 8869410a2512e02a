# Reference for TestReplacementAgainstSciPy. Run: python3 replacement.py > replacement.json
import json, scipy, sys
from scipy import integrate, optimize
from math import *
def one(k,L,cp,cf):
    S=lambda t: exp(-(t/L)**k)
    M=lambda T: integrate.quad(S,0,T,epsabs=1e-13,epsrel=1e-13,limit=200)[0]
    C=lambda T: (cp*S(T)+cf*(1-S(T)))/M(T)
    r=optimize.minimize_scalar(C,bounds=(L*1e-3,L*3),method='bounded',options={'xatol':1e-10})
    return r.x, r.fun, cf/(L*gamma(1+1/k))
def pv(k,L,a,w,cp,cf,r):
    S=lambda t: exp((a/L)**k-((a+t)/L)**k)
    f=lambda t: k/L*((a+t)/L)**(k-1)*S(t)
    return cf*integrate.quad(lambda t: exp(-r*t)*f(t),0,w,epsabs=1e-13)[0]+cp*exp(-r*w)*S(w)
cases=[]
for k,L,cp,cf in [(2.5,1000,1,5),(3,30,10,20),(2,40,1,2),(5,25,1,2),(1.5,20,3,50)]:
    b,c,f=one(k,L,cp,cf)
    cases.append(dict(shape=k,scale=L,planned=cp,failure=cf,best_age=b,cost_rate=c,run_to_failure=f,saving=1-c/f))
waits=[dict(shape=k,scale=L,age=a,wait=w,planned=cp,failure=cf,r=r,value=pv(k,L,a,w,cp,cf,r)) for k,L,a,cp,cf,r in [(3,30,20,10,20,log(1.035)),(1.5,20,8,3,50,.1),(0.7,10,3,1,4,.05)] for w in (0,2,5,10,60)]
print(json.dumps(dict(tool="SciPy "+scipy.__version__+": integrate.quad, optimize.minimize_scalar(bounded)",cases=cases,waits=waits),indent=1))
