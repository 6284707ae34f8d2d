package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.electrical.Imbalance;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.SymmetricalComponents;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import evenrise.model.project.UnbalanceLimits;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.UseCurrents;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How unequal the line currents are, in the form of NEMA MG 1 and as symmetrical components, at full use and at idle, at
 * the supply and at each panel with its feeder.
 */
final class UnbalanceCheck implements ElectricalCheck {
    private static final String ID = "unbalance";
    private static final String STATED = "electrical.unbalance, as the project states";
    private static final String MACHINES = "IEC 60034-1, continuous I2 (from memory)";

    /** Common practice, no source: designers aim at phases within a tenth of their mean. */
    private static final double USUAL_PERCENT = 10;

    /** IEC 60034-1: salient poles with indirect cooling 8 %, other machines up to 10 % (from memory). */
    private static final double MACHINES_PERCENT = 8;

    private static final double MOST_MACHINES_PERCENT = 10;

    /** Of a limit that is just met. */
    private static final double ROUNDING = 1e-9;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        UnbalanceLimits limits = layout.project()
                .electrical()
                .flatMap(Electrical::unbalance)
                .orElse(UnbalanceLimits.builder().build());
        UseCurrents idle = UseCurrents.of(layout, Load::idleAmps);
        for (Fed fed : Fed.all(layout)) {
            if (!fed.seen().isEmpty() && fed.limits().phases().size() > 1) {
                review(layout, fed, limits, layout.fullUse(), "at full use", findings);
                review(layout, fed, limits, idle, "at idle", findings);
            }
        }
    }

    private static void review(
            Layout layout, Fed fed, UnbalanceLimits limits, UseCurrents use, String when, Remarks findings) {
        PhaseCurrents sums = use.running(fed.point());
        Map<Phase, Double> lines = use.metered(fed.point());
        List<Phase> had = fed.limits().phases();
        double percent = sums.imbalance(had).percent();
        double byPhasors =
                Imbalance.of(had.stream().mapToDouble(lines::get).toArray()).percent();
        findings.add(new Quantity(fed.node(), "imbalance " + when, percent, "%")
                .atMost(USUAL_PERCENT, "common practice, no source"));
        findings.add(new Quantity(fed.node(), "imbalance by phasors " + when, byPhasors, "%")
                .atMost(limits.imbalancePercent(), STATED));
        for (Phase phase : had) {
            findings.add(
                    new Quantity(fed.node(), "sum of currents " + when + ", line " + phase, sums.amps(phase), "A"));
            findings.add(new Quantity(
                    fed.node(), "line current by phasors " + when + ", line " + phase, lines.get(phase), "A"));
        }
        String where = "the line currents of " + fed.label() + " " + when;
        over(
                fed.node(),
                byPhasors,
                limits.imbalancePercent(),
                where + ", as their phasors add, differ from their mean by",
                findings);
        String components = "";
        if (had.size() == 3) {
            SymmetricalComponents sequences = use.components(fed.point());
            components = "; negative sequence " + TENTHS.percent(sequences.negativePercent()) + ", zero sequence "
                    + TENTHS.percent(sequences.zeroPercent()) + " of the positive one";
            sequences(fed.node(), sequences, limits, where, when, findings);
            if (fed.point().parent() < 0) {
                generator(layout, fed.point(), sequences, when, findings);
            }
        }
        if (percent > USUAL_PERCENT) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("unbalanced")
                    .grade(Grade.NOTE)
                    .place(fed.node())
                    .figure(percent)
                    .limit(USUAL_PERCENT)
                    .unit("%")
                    .clause("")
                    .message(where + " differ by " + TENTHS.percent(percent, USUAL_PERCENT) + " as sums of magnitudes ("
                            + TENTHS.percent(byPhasors) + " by phasors), usual are at most "
                            + TENTHS.percent(USUAL_PERCENT, percent) + " (common practice, no source)" + components)
                    .cure("move a load to another phase or panel")
                    .build());
        }
    }

    private static void sequences(
            String node,
            SymmetricalComponents it,
            UnbalanceLimits limits,
            String where,
            String when,
            Remarks findings) {
        findings.add(new Quantity(node, "negative sequence " + when, it.negativePercent(), "%")
                .atMost(limits.negativeSequencePercent(), STATED));
        findings.add(new Quantity(node, "zero sequence " + when, it.zeroPercent(), "%")
                .atMost(limits.zeroSequencePercent(), STATED));
        findings.add(new Quantity(
                node, "negative-sequence current " + when, it.negative().length(), "A"));
        over(
                node,
                it.negativePercent(),
                limits.negativeSequencePercent(),
                where + " have a negative sequence, over the positive one, of",
                findings);
        over(
                node,
                it.zeroPercent(),
                limits.zeroSequencePercent(),
                where + " have a zero sequence, over the positive one, of",
                findings);
    }

    /** The project's own limits; none where it states none. */
    private static void over(String node, double percent, OptionalDouble limit, String what, Remarks findings) {
        if (limit.isPresent() && percent > limit.getAsDouble() + ROUNDING) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("over-limit")
                    .grade(Grade.BREAKS)
                    .place(node)
                    .figure(percent)
                    .limit(limit)
                    .unit("%")
                    .clause("")
                    .message(what + " " + TENTHS.percent(percent, limit.getAsDouble()) + ", the project allows "
                            + TENTHS.percent(limit.getAsDouble(), percent))
                    .cure("move a load to another phase or panel")
                    .build());
        }
    }

    /** What a generator bears of negative sequence, of its rated current. */
    private static void generator(Layout layout, Point point, SymmetricalComponents it, String when, Remarks findings) {
        Optional<SupplySource> generator = SourceModel.of(layout.project(), point)
                .map(SourceModel::source)
                .filter(source -> source.kind() == SourceKind.GENERATOR);
        if (generator.isEmpty()) {
            return;
        }
        if (generator.get().ratedKva().isEmpty()) {
            findings.notChecked(ID, List.of(point.id()), SourceModel.field(point) + ".rated_kva");
            return;
        }
        double rated = 1000 * generator.get().ratedKva().getAsDouble() / (3 * point.lineToNeutralVolts());
        double percent = 100 * it.negative().length() / rated;
        OptionalDouble stated = generator.get().negativeSequencePercent();
        double limit = stated.orElse(percent > MOST_MACHINES_PERCENT ? MOST_MACHINES_PERCENT : MACHINES_PERCENT);
        findings.add(
                new Quantity(point.id(), "negative sequence of the generator's rated current " + when, percent, "%")
                        .atMost(limit, stated.isPresent() ? "as its maker states" : MACHINES));
        if (percent > limit + ROUNDING) {
            boolean breaks = stated.isPresent() || percent > MOST_MACHINES_PERCENT;
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("negative-sequence")
                    .grade(breaks ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                    .place(point.id())
                    .figure(percent)
                    .limit(limit)
                    .unit("%")
                    .clause(stated.isPresent() ? "" : MACHINES)
                    .message("the generator carries a negative sequence of "
                            + HUNDREDTHS.amps(it.negative().length()) + " " + when + ", "
                            + TENTHS.percent(percent, limit)
                            + " of its rated current; "
                            + (stated.isPresent() ? "its maker allows " : "usual machines bear 8 to 10 %, here ")
                            + TENTHS.percent(limit, percent))
                    .cure("spread what is fed by one or two lines, or take a larger machine")
                    .build());
        }
    }
}
