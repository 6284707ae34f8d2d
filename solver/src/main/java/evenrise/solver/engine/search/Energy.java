package evenrise.solver.engine.search;

import evenrise.model.project.Load;
import evenrise.solver.engine.fine.FineHeat;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSums;

/**
 * What the search goes down on once every hard rule is kept: the objective with the profile's norm in the place of its
 * peak. A peak is a plateau to most moves; the norm has a slope everywhere.
 *
 * <p>It goes through stages. At first the norm is of a low order, which sees the whole profile, and what amplifiers wait
 * for is made to come on early, which makes room for them long before any of them can take it. At the end the norm is of
 * an order so high that it is all but the peak, and nothing is in haste.
 *
 * <p>What draws much as it comes on finds most room while little is on. But while it is hot, one order of the boards is as
 * good as another, and once it is cold they no longer pass each other. So in plain projects it also costs something that
 * small inrush comes before great, the less the cooler it is. A board brings its loads on close to each other, so they are
 * best alike; but a group that changes boards seldom pays before its fellows have come, too. So what is unlike on one board
 * costs something in the same way.
 *
 * <p>Where a bound says who had best sit on which phases ({@link evenrise.solver.engine.PhaseShares}), it costs something to
 * sit elsewhere. The best loading is often far from even, and from an even one single changes do not lead there.
 */
public final class Energy {
    /** Order of the norm, as a number of squarings: from 2⁵ = 32 to 2¹⁰ = 1024. Found by experiment. */
    private static final int FIRST_DOUBLINGS = 5;

    private static final int LAST_DOUBLINGS = 10;

    /** How much a second of waiting counts at first, as a part of the current of a phase with everything on. */
    private static final double HASTE_PER_SECOND = 0.05;

    /** Small projects are annealed many times over, and reach their best plan oftener without stages. */
    private static final int DOUBLINGS_OF_SMALL = 6;

    /** How much the order of inrush counts at first, in temperatures. Found by experiment, see docs/engine.md. */
    private static final double LEAN = 20;

    /** How much it counts that amplifiers of one board are unlike, in temperatures. Found by experiment. */
    private static final double MIX = 10;

    /** How much it counts where loads had best sit, in temperatures. Found by experiment. */
    private static final double WISH = 1.5;

    private final boolean hasStages;
    private final boolean isPlain;
    private final double basesAmps;
    private int doublings;
    private double temperature;
    private double hottest = 1;

    public Energy(CompiledProject compiled) {
        hasStages = !compiled.isSmall();
        isPlain = compiled.isPlain();
        doublings = hasStages ? FIRST_DOUBLINGS : DOUBLINGS_OF_SMALL;
        double sum = 0;
        for (Load load : compiled.loads) {
            sum += load.baseAmps() * load.poles();
        }
        basesAmps = compiled.project.objective().peakInrush() * sum / compiled.phaseCount;
    }

    /**
     * Goes to the stage that belongs to a part of an annealing.
     *
     * @param progress from 0 to 1
     * @return whether energies are now others than before
     */
    public boolean enterStage(double progress) {
        if (!hasStages) {
            return false;
        }
        int next = (int) Math.round(FIRST_DOUBLINGS + progress * (LAST_DOUBLINGS - FIRST_DOUBLINGS));
        boolean changes = next != doublings;
        doublings = next;
        return changes;
    }

    /** In ampere-equivalents. */
    public double of(PlanSums sums) {
        double norm = sums.inrushNormAmps(doublings);
        if (!hasStages) {
            return sums.objectiveWith(norm);
        }
        return sums.objectiveWith(norm)
                + hasteAmps() * sums.roles().readySeconds()
                + leanAmps() * sums.leaning()
                + mixAmps() * sums.unlikeness()
                + wishAmps() * sums.offWishes();
    }

    /** What a second of waiting counts now. */
    private double hasteAmps() {
        double haste = HASTE_PER_SECOND * (LAST_DOUBLINGS - doublings) / (LAST_DOUBLINGS - FIRST_DOUBLINGS);
        return hasStages ? haste * basesAmps : 0;
    }

    /** What it costs now that small inrush comes before great; it fades faster than the heat. */
    private double leanAmps() {
        return hasStages && isPlain ? LEAN * temperature * Math.sqrt(temperature / hottest) : 0;
    }

    /** What it costs now that a load is not on the phases where it had best sit. */
    private double wishAmps() {
        return hasStages ? WISH * temperature : 0;
    }

    /** What it costs now that a board has amplifiers that are unlike; no small change alters that. */
    double mixAmps() {
        return hasStages && isPlain ? MIX * temperature : 0;
    }

    /** How hot the annealing is, and has been at first, in ampere-equivalents. */
    void temperature(double now, double first) {
        temperature = now;
        hottest = first;
    }

    /** All that small changes are judged by; of temperature 0 where nothing is annealed. */
    FineHeat heat() {
        return new FineHeat(temperature, doublings, hasteAmps(), leanAmps(), wishAmps());
    }
}
