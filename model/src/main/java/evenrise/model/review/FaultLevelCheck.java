package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.electrical.breaker.InterruptingRatings;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.plan.RemarkBuilder;
import evenrise.model.project.Electrical;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Fault currents from the source down to each panel: the greatest against what the panel and its breakers can interrupt, the
 * least beside it, from which {@link DisconnectionCheck} goes on.
 */
final class FaultLevelCheck implements ElectricalCheck {
    private static final String ID = "fault-level";
    private static final int LISTED = 12;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<FaultLevels> known = FaultLevels.of(layout.project());
        if (known.isEmpty()) {
            String needs =
                    SourceModel.of(layout.project()).map(SourceModel::needs).orElse("electrical.source");
            findings.notCheckedAnywhere(
                    ID,
                    NodeFigures.SUPPLY,
                    layout.project().panels().stream().map(Panel::id).toList(),
                    needs);
            return;
        }
        FaultLevels levels = known.get();
        List<String> shown = new ArrayList<>();
        List<String> bareFeeders = new ArrayList<>();
        List<String> bareRatings = new ArrayList<>();
        Map<String, List<String>> unknown = new LinkedHashMap<>();
        for (Point point : layout.distribution().points()) {
            if (!levels.knows(point)) {
                unknown.computeIfAbsent(levels.needs(point), any -> new ArrayList<>())
                        .add(point.id());
                continue;
            }
            OptionalDouble least = levels.leastToNeutral(point);
            Quantity most = greatest(point, "greatest fault current", levels.greatest(point), levels);
            findings.add(point.isSupply() ? most : most.atMost(point.interruptingAmps(), clause(layout)));
            if (!point.isSupply()) {
                findings.add(
                        greatest(point, "greatest fault current to neutral", levels.greatestToNeutral(point), levels));
            }
            least.ifPresent(amps -> least(point, amps, levels, findings));
            shown.add((point.isSupply() ? point.label() : Phrase.quoted(point.id())) + " "
                    + range(levels.greatest(point), least));
            if (point.isSupply()) {
                continue;
            }
            if (!point.isFurtherSource() && Feeders.run(layout.project(), point).isEmpty()) {
                bareFeeders.add(point.id());
            }
            if (point.interruptingAmps().isEmpty()) {
                bareRatings.add(point.id());
            } else {
                findings.made(ID, point.id());
                interrupts(layout, point, levels, findings);
            }
        }
        Point first = layout.distribution().points().stream()
                .filter(levels::knows)
                .findFirst()
                .orElseThrow();
        findings.add(shown(layout, shown, levels, first));
        unknown.forEach((needs, places) -> findings.notChecked(ID, places, needs));
        findings.notChecked(
                ID,
                bareFeeders,
                "feeder.cable; the greatest fault current is taken as "
                        + (layout.project().nodes().isEmpty() ? "the supply's" : "that of what feeds it")
                        + ", the least is unknown");
        findings.notChecked(ID, bareRatings, "interrupting_a");
    }

    private static Quantity greatest(Point point, String name, double amps, FaultLevels levels) {
        return new Quantity(point.id(), name, amps, "A", Optional.of(levels.greatestHow(point)));
    }

    private static void least(Point point, double amps, FaultLevels levels, Remarks findings) {
        findings.add(new Quantity(
                point.id(), "least fault current to neutral", amps, "A", Optional.of(levels.leastHow(point))));
    }

    private static void interrupts(Layout layout, Point point, FaultLevels levels, Remarks findings) {
        double most = levels.greatest(point);
        double rated = point.interruptingAmps().getAsDouble();
        OptionalDouble atAnyAngle = levels.greatestAtAnyAngle(point);
        if (most > rated) {
            findings.add(remark(layout, point, most)
                    .grade(Grade.BREAKS)
                    .message(point.label() + " can see a fault of " + kiloamps(most, rated) + " ("
                            + levels.greatestHow(point) + "), it interrupts " + kiloamps(rated, most))
                    .cure(cure(practice(layout), most))
                    .build());
        } else if (atAnyAngle.isPresent() && atAnyAngle.getAsDouble() > rated) {
            double worst = atAnyAngle.getAsDouble();
            findings.add(remark(layout, point, worst)
                    .grade(Grade.NOT_CHECKED)
                    .message("not checked: needs " + angle(point) + ". " + upper(point.label())
                            + " interrupts " + kiloamps(rated, worst) + ", which is enough for the "
                            + kiloamps(most, rated) + " of an assumed X/R and not for the " + kiloamps(worst, rated)
                            + " that another could give.")
                    .build());
        }
    }

    private static RemarkBuilder remark(Layout layout, Point point, double amps) {
        return Remark.builder()
                .check(ID)
                .kind("over-interrupting-rating")
                .place(point.id())
                .figure(amps)
                .limit(point.interruptingAmps())
                .unit("A")
                .clause(clause(layout));
    }

    private static String clause(Layout layout) {
        return practice(layout) == Practice.IEC ? "IEC 60364-4-43 clause 434.5.1 (clause from memory)" : "NEC 110.9";
    }

    private static String upper(String label) {
        return Character.toUpperCase(label.charAt(0)) + label.substring(1);
    }

    /** Whatever of it is not stated. */
    private static String angle(Point point) {
        boolean isSupplys = point.origin() == Distribution.SUPPLY;
        return isSupplys ? "electrical.source.x_over_r" : "x_over_r of every source and transformer before it";
    }

    private static Practice practice(Layout layout) {
        return layout.project().electrical().flatMap(Electrical::practice).orElse(Practice.NEC);
    }

    private static String cure(Practice practice, double amps) {
        OptionalDouble next = InterruptingRatings.atLeast(practice, amps);
        return next.isPresent()
                ? "take breakers of " + Decimals.toThousandths(next.getAsDouble() / 1000) + " kA"
                : "put a limiting device before it";
    }

    private static Remark shown(Layout layout, List<String> places, FaultLevels levels, Point point) {
        boolean isStar = Feeders.isStar(layout);
        String others = isStar ? "" : ", of others as its figure says";
        String more = places.size() > LISTED ? "; and " + (places.size() - LISTED) + " more" : "";
        return Remark.builder()
                .check(ID)
                .kind("levels")
                .grade(Grade.NOTE)
                .place(NodeFigures.SUPPLY)
                .message("greatest fault current (" + levels.greatestHow(point) + others + ") and least to neutral ("
                        + levels.leastHow(point) + others + "): "
                        + places.stream().limit(LISTED).collect(Collectors.joining("; ")) + more
                        + ". The greatest is for interrupting ratings, the least for what must trip.")
                .build();
    }

    private static String range(double most, OptionalDouble least) {
        return amps(most) + " and " + (least.isPresent() ? amps(least.getAsDouble()) : "unknown");
    }

    private static String amps(double amps) {
        return Decimals.toThousandths(Math.round(amps)) + " A";
    }

    private static String kiloamps(double amps, double beside) {
        return Decimals.apart(amps / 1000, beside / 1000, 1) + " kA";
    }
}
