package evenrise.model.measured;

import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.MeasuredValue;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;

/**
 * A plant as measured beside its plan.
 *
 * @param discrepancies what matters most first
 * @param coverage how much was measured
 * @param refitted the project with what was measured
 * @param planned what the rules say with currents as stated
 * @param measured what they say with currents as measured, each with all that it may be off by on top
 * @param broken rules on currents that are broken with those and were kept with what was stated
 * @param use that became a scene of the project with what was measured; empty where nobody named one
 * @param voltages how those that were read scatter; empty where fewer than three were
 */
public record MeasuredPlant(
        List<Discrepancy> discrepancies,
        Coverage coverage,
        Refitted refitted,
        Verdict planned,
        Verdict measured,
        List<BrokenRule> broken,
        Optional<UseScene> use,
        Optional<VoltageScatter> voltages) {
    private static final Set<String> ON_CURRENTS = Set.of("rating", "neutral", "inrush-limit");

    /** @param isConfirmed of which loads somebody confirms that readings were at full use */
    public static MeasuredPlant of(Layout layout, SiteReadings readings, Predicate<String> isConfirmed) {
        return of(layout, readings, List.of(), isConfirmed);
    }

    /** @param recorded what a recorded start says beside the readings */
    public static MeasuredPlant of(
            Layout layout, SiteReadings readings, List<Discrepancy> recorded, Predicate<String> isConfirmed) {
        return of(layout, readings, recorded, isConfirmed, Optional.empty());
    }

    /** @param use in which running currents were read, by the id of the scene that it becomes */
    public static MeasuredPlant of(
            Layout layout,
            SiteReadings readings,
            List<Discrepancy> recorded,
            Predicate<String> isConfirmed,
            Optional<String> use) {
        List<Discrepancy> all = new ArrayList<>(recorded);
        all.addAll(LoadCurrents.of(layout.placements(), readings));
        all.addAll(LoadTimes.of(layout, readings));
        all.addAll(PlaceTotals.of(layout, readings));
        all.addAll(DeviceTests.of(readings));
        all.addAll(failed(readings));
        all.sort(Discrepancy.BY_WEIGHT);
        Refitted read = Refit.of(layout.project(), readings, isConfirmed);
        Optional<UseScene> scene = use.map(id -> UseScene.of(read.project(), readings, id));
        Refitted refitted =
                new Refitted(scene.map(each -> each.in(read.project())).orElse(read.project()), read.changes());
        Verdict planned = Referee.judge(layout);
        Plan plan = layout.plan();
        Verdict measured = Referee.judge(Layout.of(refitted.project(), plan));
        List<BrokenRule> broken = measured.violations().stream()
                .filter(each -> ON_CURRENTS.contains(each.rule()))
                .filter(each -> planned.violations().stream()
                        .noneMatch(was ->
                                was.rule().equals(each.rule()) && was.place().equals(each.place())))
                .toList();
        return new MeasuredPlant(
                all,
                Coverage.of(layout, readings),
                refitted,
                planned,
                measured,
                broken,
                scene,
                VoltageScatter.of(layout, readings));
    }

    /** What a sheet says failed, and nothing else explains. */
    private static List<Discrepancy> failed(SiteReadings readings) {
        List<Discrepancy> failed = new ArrayList<>();
        readings.poles().stream()
                .filter(each -> !each.passed().orElse(true))
                .forEach(each -> failed.add(failed(each.load(), each.remark(), each.visit())));
        readings.places().stream()
                .filter(each -> !each.passed().orElse(true))
                .forEach(each -> failed.add(failed(each.place(), Optional.empty(), each.visit())));
        return failed;
    }

    private static Discrepancy failed(String subject, Optional<String> remark, Visit visit) {
        return new Discrepancy(
                Weight.FAULT,
                subject,
                Optional.empty(),
                MeasuredQuantity.RESULT,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                "the sheet says that it failed",
                remark.map(words -> "what the sheet says: " + words).orElse("who wrote it"),
                visit);
    }

    public SiteVerdict verdict() {
        if (count(Weight.UNSAFE) > 0 || !broken.isEmpty()) {
            return SiteVerdict.UNSAFE;
        }
        if (count(Weight.FAULT) + count(Weight.DIFFERS) > 0) {
            return SiteVerdict.DIFFERS;
        }
        return coverage.isEnough() ? SiteVerdict.AS_PLANNED : SiteVerdict.NOT_ENOUGH;
    }

    public long count(Weight weight) {
        return discrepancies.stream().filter(each -> each.weight() == weight).count();
    }

    /**
     * Figures that were off by more than model and meter explain, the most first: of running currents below what is stated
     * where it was full use, of peaks above it alone, of dead loads none.
     */
    public List<FieldChange> wrongPlates() {
        return refitted.changes().stream()
                .filter(each -> each.visit().isPresent())
                .filter(each -> Math.abs(each.measured() - each.before())
                        > Expectation.MODEL_SPREAD * each.before() + each.spread())
                .filter(each -> each.isTaken() || each.field().equals(MeasuredValue.IDLE) && !each.isDead())
                .sorted(Comparator.comparingDouble((FieldChange each) -> -Math.abs(each.offBy())))
                .toList();
    }
}
