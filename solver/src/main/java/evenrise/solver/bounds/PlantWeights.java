package evenrise.solver.bounds;

import evenrise.model.project.Overlap;
import java.util.Arrays;

/**
 * Weights by source, command and instant, none below 0, and of what is in use. They lie in blocks, one for each source and
 * command: first the instants, then what is in use. Of a share, which has sum 1, the blocks are those of one source where one
 * system starts at a time, else each block is one.
 */
final class PlantWeights {
    /** Where the search begins: so much on the last instant, on those from the first amplifier on, and on all. */
    private static final double ON_END = 0.2;

    private static final double FROM_AMPLIFIERS = 0.7;
    private static final double ON_ALL = 0.1;

    /** In use a system mostly draws more than while it starts. */
    private static final double IN_USE = 20;

    private final int sources;
    private final int clocks;
    private final int instants;
    private final int blocksOfShare;
    final double[] values;

    private PlantWeights(int sources, int clocks, int instants, int blocksOfShare, double[] values) {
        this.sources = sources;
        this.clocks = clocks;
        this.instants = instants;
        this.blocksOfShare = blocksOfShare;
        this.values = values;
    }

    /** Where to begin. */
    static PlantWeights begin(PlantLoads plant, PlantWindows windows, int end) {
        int count = plant.grid.count();
        int clocks = plant.clocks.size();
        boolean isOne = plant.hasClocks && plant.project.overlap() == Overlap.ONE_AT_A_TIME;
        double[] values = new double[plant.sources.length * clocks * (count + 1)];
        int share = isOne ? clocks : 1;
        PlantWeights begun = new PlantWeights(plant.sources.length, clocks, count, share, values);
        for (int source = 0; source < plant.sources.length; source++) {
            for (int clock = 0; clock < clocks; clock++) {
                int at = begun.block(source, clock);
                int late = Math.min(end, windows.firstAmplifier(plant, clock));
                for (int i = 0; i <= end; i++) {
                    values[at + i] =
                            (ON_ALL / (end + 1) + (i >= late ? FROM_AMPLIFIERS / (end + 1 - late) : 0)) / share;
                }
                values[at + end] += ON_END / share;
                values[at + count] = plant.hasClocks ? IN_USE / share : 0;
            }
        }
        begun.makeShares();
        return begun;
    }

    PlantWeights with(double[] other) {
        PlantWeights made = new PlantWeights(sources, clocks, instants, blocksOfShare, other);
        made.makeShares();
        return made;
    }

    /** Makes each share sum up to 1. */
    private void makeShares() {
        int length = shareLength();
        for (int from = 0; from < values.length; from += length) {
            double sum = 0;
            for (int i = from; i < from + length; i++) {
                sum += values[i];
            }
            for (int i = from; i < from + length; i++) {
                values[i] /= sum;
            }
        }
    }

    /** Weights of one share stand in so many places in a row. */
    int shareLength() {
        return blocksOfShare * (instants + 1);
    }

    int block(int source, int clock) {
        return (source * clocks + clock) * (instants + 1);
    }

    /** Of the instants of a block. */
    double[] ofInstants(int source, int clock) {
        int from = block(source, clock);
        return Arrays.copyOfRange(values, from, from + instants);
    }
}
