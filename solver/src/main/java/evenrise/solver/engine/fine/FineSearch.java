package evenrise.solver.engine.fine;

import evenrise.model.project.ObjectiveWeights;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PhaseWishes;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.BitSet;
import java.util.SplittableRandom;

/**
 * Small changes of a plan, one after another, each kept or dropped by the same energy and temperature as a move of the
 * search; none of them breaks a rule that it looks at. Loads keep their board and their panel.
 *
 * <p>For projects of {@link #suits}: one supply, no limits at panels, nothing that asks for events or for tidiness.
 */
public final class FineSearch {
    private static final int OF = 16;
    /** Of so many draws, slots, and then outputs; the rest sets boards. Found by experiment. */
    private static final int SLOTS = 6;

    private static final int OUTPUTS = 14;

    private final CompiledProject compiled;
    private final FinePlan plan;
    private final FineDraws slots;
    private final FineDraws outputs;
    private final FineDraws settings;
    private final FineChange change = new FineChange();
    private final double peakWeight;
    private final double durationWeight;
    private final double limitUnits;

    private FineHeat heat;
    private double energy;
    private double deviationsAmps;
    private double leaning;
    private double offWishes;

    /** @param compiled a project of {@link #suits} */
    public FineSearch(CompiledProject compiled) {
        this.compiled = compiled;
        plan = new FinePlan(compiled);
        slots = new SlotDraws(plan);
        outputs = new OutputDraws(plan);
        settings = new SettingDraws(plan);
        ObjectiveWeights weights = compiled.project.objective();
        peakWeight = weights.peakInrush() / compiled.envelopes.unitsPerAmp;
        durationWeight = weights.duration() / 1e6;
        limitUnits = compiled.limits.supplyInrushAmps() * compiled.envelopes.unitsPerAmp;
    }

    /** Whether small changes know all that a project asks for. */
    public static boolean suits(CompiledProject compiled) {
        return compiled.isPlain() && compiled.instants.isGrid();
    }

    /** Becomes a plan that keeps every rule. */
    public void take(PlanSums sums) {
        plan.take(sums);
    }

    /** Until the next plan, changes only what these boards switch and what sits in these panels. */
    public void only(BitSet boards, BitSet panels) {
        plan.only(boards, panels);
    }

    /** Tries so many changes. */
    public void run(int count, FineHeat now, SplittableRandom random) {
        heat = now;
        plan.profile.begin(heat.doublings());
        deviationsAmps = plan.currents.deviationsAmps();
        leaning = plan.leaning;
        offWishes = plan.offWishes;
        energy = energyWith(plan.profile.norm());
        for (int i = 0; i < count; i++) {
            change.clear(CompiledProject.NONE);
            if (choose(random).draw(change, random)) {
                judge(random);
            }
        }
        plan.currents.deviationsAmps(deviationsAmps);
        plan.leaning = leaning;
        plan.offWishes = offWishes;
    }

    private FineDraws choose(SplittableRandom random) {
        int kind = random.nextInt(OF);
        if (kind < SLOTS) {
            return slots;
        }
        return kind < OUTPUTS ? outputs : settings;
    }

    /** The energy of the plan as it is, by the heat of the last run. */
    public double energy() {
        return energy;
    }

    private double energyWith(double norm) {
        return peakWeight * norm
                + durationWeight * compiled.instants.micros(plan.profile.lastUsed())
                + deviationsAmps
                + compiled.project.objective().boards() * plan.boardsUsed
                + heat.hasteAmps() * plan.order.readySeconds()
                + heat.leanAmps() * leaning
                + heat.wishAmps() * offWishes;
    }

    private void judge(SplittableRandom random) {
        double deviationsBefore = deviationsAmps;
        double leaningBefore = leaning;
        double offWishesBefore = offWishes;
        boolean moves = change.panel != CompiledProject.NONE;
        long overload = moves ? plan.currents.overload(change.panel) : 0;
        work(1);
        boolean isAllowed = moves ? plan.currents.overload(change.panel) <= overload : plan.order.isKept();
        if (isAllowed && isKept(random)) {
            plan.profile.keep();
            plan.make(change);
        } else {
            plan.profile.drop();
            work(-1);
            deviationsAmps = deviationsBefore;
            leaning = leaningBefore;
            offWishes = offWishesBefore;
        }
    }

    private boolean isKept(SplittableRandom random) {
        double next = energyWith(plan.profile.tried());
        double rise = next - energy;
        boolean keeps = (rise <= 0 || random.nextDouble() < Math.exp(-rise / heat.temperature()))
                && plan.profile.staysBelow(limitUnits);
        energy = keeps ? next : energy;
        return keeps;
    }

    /** Works the change into order and currents, or out of them again; into the profile it is put to the test alone. */
    private void work(int sign) {
        boolean moves = change.panel != CompiledProject.NONE;
        double off = moves ? plan.currents.deviationsAmps(change.panel) : 0;
        for (int i = 0; i < change.count; i++) {
            int load = change.loads[i];
            int mask = plan.placeOf[load].phaseMask();
            int next = change.places[i].phaseMask();
            int from = plan.instantOf[load];
            int to = change.instants[i];
            if (mask != next) {
                offWishes += sign
                        * PhaseWishes.parts(
                                compiled.wishes.offUnits(load, next) - compiled.wishes.offUnits(load, mask));
                plan.currents.add(load, change.panel, mask, -sign);
                plan.currents.add(load, change.panel, next, sign);
            }
            if (from != to) {
                plan.order.add(load, from, -sign);
                plan.order.add(load, to, sign);
                leaning += plan.leanOf(load) * (to - from);
            }
            if (sign > 0) {
                plan.profile.move(load, mask, from, next, to);
            }
        }
        if (moves) {
            deviationsAmps += plan.currents.deviationsAmps(change.panel) - off;
        }
    }

    public Place placeOf(int load) {
        return plan.placeOf[load];
    }

    public Output outputOf(int load) {
        return plan.outputOf[load];
    }

    public Setting startDelay(int board) {
        return plan.startDelay(board);
    }

    public Setting step(int board) {
        return plan.step(board);
    }
}
