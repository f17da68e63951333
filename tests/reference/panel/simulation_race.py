"""Simulated tastings in vectorised NumPy, for a race with the library's in one run; see SimulationRaceTests and simulation-race.csv.

    OMP_NUM_THREADS=1 python3 simulation_race.py TASTINGS ROUNDS

Two tasks. "triangle": tastings of d-prime 1, three normal draws each, counted right. "panels": 24 people a panel, 30 % of them with
d-prime 2 and the others with none, one answer in ten a mere guess; the share of panels with 13 or more right. Arrays are made in
chunks that fit the cache, which is NumPy's best case. Printed: task, share, the least processor time of the rounds in seconds.
"""
import sys
import time

import numpy as np

CHUNK = 16_384
random = np.random.Generator(np.random.SFC64(1))


def right(size, d):
    x, y, odd = random.standard_normal(size), random.standard_normal(size), random.standard_normal(size) + d
    like = np.abs(x - y)
    return (like < np.abs(x - odd)) & (like < np.abs(y - odd))


def triangle(tastings):
    correct = 0
    for done in range(0, tastings, CHUNK):
        correct += np.count_nonzero(right(min(CHUNK, tastings - done), 1.0))
    return correct / tastings


def panels(tastings):
    people, reached, count = 24, 0, tastings // 24
    per_chunk = CHUNK // people
    for done in range(0, count, per_chunk):
        size = min(per_chunk, count - done) * people
        d = np.where(random.random(size) < 0.30, 2.0, 0.0)
        guess = random.random(size) < 0.10
        answers = np.where(guess, random.random(size) < 1 / 3, right(size, d))
        reached += np.count_nonzero(answers.reshape(-1, people).sum(axis=1) >= 13)
    return reached / count


def main():
    tastings, rounds = int(sys.argv[1]), int(sys.argv[2])
    print(f"# python {sys.version.split()[0]}, numpy {np.__version__}")
    for task in (triangle, panels):
        least = float("inf")
        for _ in range(rounds):
            start = time.process_time()
            share = task(tastings)
            least = min(least, time.process_time() - start)
        print(f"{task.__name__},{share:.6f},{least:.4f}")


if __name__ == "__main__":
    main()
