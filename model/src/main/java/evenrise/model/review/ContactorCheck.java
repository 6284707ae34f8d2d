package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.breaker.MakingCapacity;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Contactor;
import evenrise.model.project.ContactorCategory;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * Contactors against all that is behind them, which they close onto at once, phase by phase: running current against the
 * rating of the category, peaks against what they make; and what a point peaks at if all contactors below it have dropped
 * out and close again together.
 */
final class ContactorCheck implements ElectricalCheck {
    private static final String ID = "contactor";
    private static final String RATED = "IEC 60947-4-1, rated operational current";
    private static final String MAKING = "IEC 60947-4-1, IEC 61095: making capacity (multiples from memory)";
    private static final double LAST_BITS = 1e-9;

    private static final Set<ContactorCategory> FOR_MOTORS =
            EnumSet.of(ContactorCategory.AC_3, ContactorCategory.AC_4, ContactorCategory.AC_7B);

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<String> bare = new ArrayList<>();
        List<String> makers = new ArrayList<>();
        List<String> withoutInrush = new ArrayList<>();
        for (Load lead : layout.project().loads()) {
            if (lead.switchedBy() != SwitchedBy.CONTACTOR || lead.comesWith().isPresent()) {
                continue;
            }
            List<Placement> behind = behind(layout, lead);
            behind.stream()
                    .filter(each -> each.load().inrushPeakAmps().isEmpty())
                    .forEach(each -> withoutInrush.add(each.id()));
            Optional<Contactor> contactor = lead.contactor();
            if (contactor.isEmpty()) {
                bare.add(lead.id());
                continue;
            }
            findings.made(ID, lead.id());
            running(lead, contactor.get(), behind, findings);
            if (makingPeak(contactor.get()).isEmpty()) {
                makers.add(lead.id());
            } else {
                making(lead, contactor.get(), behind, findings);
            }
            motors(lead, contactor.get(), behind, findings);
        }
        Fed.all(layout).forEach(fed -> together(layout, fed, findings));
        findings.notChecked(ID, bare, "contactor.category and rated_a");
        findings.notChecked(ID, makers, "contactor.making_peak_a, which only makers state for this category");
        findings.notChecked(ID, withoutInrush, "inrush_peak_a; what contactors close onto leaves these inrushes out");
    }

    /** The load and those that come with it, that sit somewhere. */
    private static List<Placement> behind(Layout layout, Load lead) {
        return layout.placements().stream()
                .filter(Placement::fits)
                .filter(each -> each.id().equals(lead.id())
                        || each.load().comesWith().filter(lead.id()::equals).isPresent())
                .toList();
    }

    private static void running(Load lead, Contactor contactor, List<Placement> behind, Remarks findings) {
        double most = most(behind, ContactorCheck::useAmps);
        findings.add(new Quantity(lead.id(), "running current of its contactor's fullest pole", most, "A")
                .atMost(contactor.ratedAmps(), RATED));
        if (most > contactor.ratedAmps() + LAST_BITS) {
            findings.add(Remark.inAmps(ID, lead.id(), most, contactor.ratedAmps())
                    .kind("over-rated-current")
                    .grade(Grade.BREAKS)
                    .clause(RATED)
                    .message("the contactor of load " + Phrase.quoted(lead.id()) + " carries "
                            + HUNDREDTHS.amps(most, contactor.ratedAmps())
                            + " on its fullest pole, with what comes with it ("
                            + behind.size() + " circuits), it is rated "
                            + HUNDREDTHS.amps(contactor.ratedAmps(), most) + " in " + name(contactor))
                    .cure("take a larger one, or put fewer circuits behind it")
                    .build());
        }
    }

    private static void making(Load lead, Contactor contactor, List<Placement> behind, Remarks findings) {
        double peak = most(behind, load -> Math.max(load.inrushAmps(), load.baseAmps()));
        double allowed = makingPeak(contactor).getAsDouble();
        boolean isStated = contactor.makingPeakAmps().isPresent();
        findings.add(new Quantity(lead.id(), "peak that its contactor closes onto", peak, "A")
                .atMost(allowed, isStated ? "peak that the maker states" : MAKING));
        if (peak > allowed + LAST_BITS) {
            findings.add(Remark.inAmps(ID, lead.id(), peak, allowed)
                    .kind("over-making-capacity")
                    .grade(isStated ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                    .clause(isStated ? "" : MAKING)
                    .message("the contactor of load " + Phrase.quoted(lead.id()) + " closes onto "
                            + HUNDREDTHS.amps(peak, allowed)
                            + " on its fullest pole, all circuits behind it at once; "
                            + (isStated ? "its maker allows " : "a making capacity in " + name(contactor) + " is ")
                            + HUNDREDTHS.amps(allowed, peak))
                    .cure("put fewer circuits behind it, limit their inrush, or take one whose maker states"
                            + " a peak")
                    .build());
        }
    }

    private static void motors(Load lead, Contactor contactor, List<Placement> behind, Remarks findings) {
        List<Load> motors =
                behind.stream().map(Placement::load).filter(Load::isMotor).toList();
        if (!motors.isEmpty() && !FOR_MOTORS.contains(contactor.category())) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("motors-without-rating")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .place(lead.id())
                    .clause("IEC 60947-4-1, utilisation categories")
                    .message("the contactor of load " + Phrase.quoted(lead.id()) + " is rated in " + name(contactor)
                            + ", and behind it are motors: " + Remarks.namedLoads(motors))
                    .cure("take one with a rating in AC-3")
                    .build());
        }
    }

    /** All contactors below a point close at once on what is in full use beside them. */
    private static void together(Layout layout, Fed fed, Remarks findings) {
        if (fed.seen().stream().noneMatch(each -> isBehindContactor(layout, each.placement()))) {
            return;
        }
        double most = 0;
        for (Phase phase : fed.point().system().phases()) {
            double sum = 0;
            for (NodeLoads.Seen each : fed.seen()) {
                Load load = each.placement().load();
                double crest = Math.sqrt(2) * useAmps(load);
                double drawn = isBehindContactor(layout, each.placement()) ? crest + load.excessAmps() : crest;
                sum += each.parts()[phase.ordinal()] * drawn;
            }
            most = Math.max(most, sum);
        }
        OptionalDouble limit = fed.limits().inrushLimitAmps();
        findings.add(new Quantity(fed.node(), "peak if all contactors close together in full use", most, "A")
                .atMost(limit, "inrush_limit_a, as the project states"));
        if (limit.isPresent()) {
            findings.made(ID, fed.node());
        }
        if (limit.isPresent() && most > limit.getAsDouble() + LAST_BITS) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("close-again-together")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .place(fed.node())
                    .figure(most)
                    .limit(limit)
                    .unit("A")
                    .clause("IEC 60947-4-1: drop-out between 75 and 20 % of the coil's voltage (from memory)")
                    .message("after a sag that lets contactors drop out, those below " + fed.label()
                            + " may close again together while all else is in full use, a peak of "
                            + HUNDREDTHS.amps(most, limit.getAsDouble()) + ", inrush_limit_a allows "
                            + HUNDREDTHS.amps(limit.getAsDouble(), most))
                    .cure("hold their coils through a sag, or let the control open its outputs then and start the"
                            + " sequence anew")
                    .build());
        }
    }

    private static boolean isBehindContactor(Layout layout, Placement placement) {
        return placement.load().switchedBy() == SwitchedBy.CONTACTOR
                || placement.load().comesWith().isPresent();
    }

    private static OptionalDouble makingPeak(Contactor contactor) {
        if (contactor.makingPeakAmps().isPresent()) {
            return contactor.makingPeakAmps();
        }
        OptionalDouble ratio = MakingCapacity.ratio(contactor.category());
        return ratio.isPresent()
                ? OptionalDouble.of(Math.sqrt(2) * ratio.getAsDouble() * contactor.ratedAmps())
                : OptionalDouble.empty();
    }

    private static double useAmps(Load load) {
        return Math.max(load.runningAmps(), load.idleAmps());
    }

    private static double most(List<Placement> behind, ToDoubleFunction<Load> amps) {
        Map<Phase, Double> sums = new EnumMap<>(Phase.class);
        behind.forEach(each -> each.phases().stream()
                .distinct()
                .forEach(phase -> sums.merge(phase, amps.applyAsDouble(each.load()), Double::sum)));
        return sums.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
    }

    private static String name(Contactor contactor) {
        String name = contactor.category().name().replace('_', '-');
        return name.endsWith("A") || name.endsWith("B")
                ? name.substring(0, name.length() - 1) + Character.toLowerCase(name.charAt(name.length() - 1))
                : name;
    }
}
