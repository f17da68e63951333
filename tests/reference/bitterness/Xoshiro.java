// Rectangular and normal numbers from the JDK's own generators: SplittableRandom, which is SplitMix64, makes the state, and
// Xoshiro256PlusPlus the bits. Four generators side by side; lane by lane their outputs make a block as the library fills it.
//
// Run: java --add-modules jdk.random --add-exports jdk.random/jdk.random=ALL-UNNAMED Xoshiro.java > Xoshiro.csv

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import jdk.random.Xoshiro256PlusPlus;

class Xoshiro {
    static final long GOLDEN = 0x9E3779B97F4A7C15L;

    /** SplitMix64's output for a state before its increment. */
    static long mix(long z) {
        return new SplittableRandom(z - GOLDEN).nextLong();
    }

    static RandomGenerator[] lanes(long seed, long stream) {
        SplittableRandom words = new SplittableRandom(mix(seed) ^ mix(stream * GOLDEN + 0x632BE59BD9B4E019L));
        long[] state = new long[16];
        for (int word = 0; word < 16; word++) state[word] = words.nextLong();
        RandomGenerator[] lanes = new RandomGenerator[4];
        for (int lane = 0; lane < 4; lane++) lanes[lane] = new Xoshiro256PlusPlus(state[lane], state[4 + lane], state[8 + lane], state[12 + lane]);
        return lanes;
    }

    /** The highest 52 bits as a share in [0, 1). */
    static double share(RandomGenerator lane) {
        return (lane.nextLong() >>> 12) * 0x1p-52;
    }

    public static void main(String[] args) {
        System.out.println("# java " + System.getProperty("java.version"));
        System.out.println("seed,stream,shape,index,value");
        long[][] starts = { { 0, 0 }, { 1, 0 }, { 2026, 0 }, { 2026, 1 }, { -1, 7 } };
        for (long[] start : starts) {
            RandomGenerator[] lanes = lanes(start[0], start[1]);
            String head = start[0] + "," + start[1];
            for (int index = 0; index < 12; index++) {
                System.out.println(head + ",rectangular," + index + "," + Math.sqrt(12) * (share(lanes[index % 4]) - 0.5));
            }

            lanes = lanes(start[0], start[1]);
            for (int pair = 0; pair < 2; pair++) {
                double[] values = new double[8];
                for (int lane = 0; lane < 4; lane++) {
                    double radius = Math.sqrt(-2 * Math.log(1 - share(lanes[lane]))), angle = 2 * Math.PI * (share(lanes[lane]) - 0.5);
                    values[lane] = radius * Math.cos(angle);
                    values[lane + 4] = radius * Math.sin(angle);
                }

                for (int i = 0; i < 8; i++) System.out.println(head + ",normal," + (8 * pair + i) + "," + values[i]);
            }
        }
    }
}
