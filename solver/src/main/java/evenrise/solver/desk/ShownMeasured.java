package evenrise.solver.desk;

import evenrise.model.measured.Discrepancy;
import evenrise.model.measured.FieldChange;
import evenrise.model.measured.MeasuredPlant;
import evenrise.model.observation.ObservedStart;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.plan.BrokenRule;
import evenrise.solver.app.CommissionResult;
import evenrise.solver.app.RecordedPlant;
import evenrise.solver.desk.MeasuredAnswers.ChangeView;
import evenrise.solver.desk.MeasuredAnswers.DifferenceView;
import evenrise.solver.desk.MeasuredAnswers.FoundView;
import evenrise.solver.desk.MeasuredAnswers.LaneView;
import evenrise.solver.desk.MeasuredAnswers.OpenStartView;
import evenrise.solver.desk.MeasuredAnswers.RecordedView;
import evenrise.solver.desk.MeasuredAnswers.TickView;
import evenrise.solver.rendering.OverlaidCurves;
import evenrise.solver.report.DiscrepancyRow;
import evenrise.solver.report.MeasuredPlantText;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A plant as measured, as windows show it. */
final class ShownMeasured {
    private final CommissionResult result;
    private final List<String> notes;
    private final Set<String> inFullUse;
    private final Map<String, Double> surePercent;

    /**
     * @param notes what was left out of account on the way
     * @param inFullUse loads that somebody saw in full use
     */
    ShownMeasured(CommissionResult result, List<String> notes, Set<String> inFullUse) {
        this.result = result;
        this.notes = Stream.concat(notes.stream(), result.notes().stream())
                .distinct()
                .toList();
        this.inFullUse = inFullUse;
        this.surePercent = result.recorded().stream()
                .flatMap(each -> each.seen().starts().stream())
                .filter(each -> each.finding().isDifference())
                .collect(Collectors.toMap(ShownMeasured::loads, each -> 100 * each.confidence(), Math::min));
    }

    FoundView view() {
        MeasuredPlant plant = result.plant();
        return new FoundView(
                plant.verdict(),
                plant.verdict().words(),
                plant.verdict().meaning(),
                MeasuredPlantText.counts(plant),
                MeasuredPlantText.coverage(plant.coverage()),
                plant.discrepancies().stream().map(this::view).toList(),
                result.recorded().map(ShownMeasured::view),
                plant.refitted().changes().stream().map(this::view).toList(),
                MeasuredPlantText.takenWords(plant),
                plant.broken().stream().map(BrokenRule::message).toList(),
                MeasuredPlantText.limitsWords(plant),
                plant.planned().metrics().peakInrushAmps(),
                plant.measured().metrics().peakInrushAmps(),
                result.leastPeakAmps(),
                plant.coverage().missing(),
                notes);
    }

    private DifferenceView view(Discrepancy each) {
        DiscrepancyRow row = DiscrepancyRow.of(each);
        boolean isRecorded =
                result.recorded().filter(it -> it.file().equals(row.at())).isPresent();
        Double sure = surePercent.get(each.subject());
        return new DifferenceView(
                each.weight(),
                row.weightWord(),
                row.subject(),
                row.quantity(),
                row.planned(),
                row.measured(),
                row.within(),
                isRecorded && sure != null ? OptionalDouble.of(sure) : OptionalDouble.empty(),
                row.cause(),
                row.lookAt(),
                row.date(),
                row.meter(),
                row.at());
    }

    private ChangeView view(FieldChange each) {
        return new ChangeView(
                each.kind(),
                each.load(),
                each.field(),
                each.before(),
                each.after(),
                each.wasGuessed(),
                each.measured(),
                each.spread(),
                each.visit().flatMap(visit -> visit.date()).orElse(""),
                each.visit().map(visit -> visit.meter().name()).orElse(""),
                each.waitsForFullUse() || each.kind() == FieldChange.Kind.LOWERED,
                inFullUse.contains(each.load()),
                each.why());
    }

    private static RecordedView view(RecordedPlant recorded) {
        OverlaidCurves curves = OverlaidCurves.of(
                recorded.place(),
                recorded.planned(),
                recorded.recording(),
                recorded.seen().clock());
        return new RecordedView(
                recorded.file(),
                recorded.place(),
                recorded.seen().isRecognised(),
                recorded.columns(),
                curves.width(),
                curves.height(),
                curves.lanes().stream()
                        .map(each -> new LaneView(each.phase(), each.planned(), each.recorded(), each.top()))
                        .toList(),
                curves.ticks().stream()
                        .map(each -> new TickView(each.label(), each.at()))
                        .toList(),
                recorded.seen().starts().stream()
                        .filter(each -> each.finding() == Finding.CANNOT_TELL || each.finding() == Finding.TOO_SMALL)
                        .map(each -> new OpenStartView(
                                loads(each),
                                each.expected().seconds(),
                                each.finding().words(),
                                each.finding() == Finding.CANNOT_TELL
                                        ? each.likeliest().words()
                                        : "",
                                100 * each.confidence()))
                        .toList(),
                recorded.notes());
    }

    private static String loads(ObservedStart start) {
        return String.join(" + ", start.expected().loads());
    }
}
