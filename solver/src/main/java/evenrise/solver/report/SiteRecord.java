package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.measured.FieldChange;
import evenrise.model.measured.MeasuredPlant;
import evenrise.model.measured.SiteVerdict;
import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/**
 * A plant as measured, for page, paper and tables.
 *
 * @param days on which was measured
 * @param files the sheets and the recording
 * @param recorded what a recorded start says in short; none where none was given
 */
public record SiteRecord(
        String project,
        String revision,
        String date,
        String projectSha256,
        String verdict,
        String meaning,
        boolean isGood,
        String counts,
        String coverage,
        List<String> days,
        List<String> files,
        List<String> recorded,
        List<DiscrepancyRow> differences,
        long less,
        List<String> broken,
        String limits,
        List<String> gain,
        List<Plate> plates,
        String taken,
        List<String> open) {
    /** A figure that was off. */
    public record Plate(
            String load, String field, String was, String said, String measured, String within, String off) {
        static Plate of(FieldChange each) {
            return new Plate(
                    each.load(),
                    each.field(),
                    each.wasGuessed() ? "guessed" : "stated",
                    Decimals.fixed(each.before(), 2),
                    Decimals.fixed(each.measured(), 2),
                    Decimals.fixed(each.spread(), 2),
                    Decimals.fixed(100 * each.offBy(), 0) + " %");
        }
    }

    /** @param projectSha256 of the project with what was measured */
    public static SiteRecord of(
            MeasuredPlant plant,
            RenewalGain gain,
            String revision,
            String date,
            String projectSha256,
            List<String> days,
            List<String> files,
            List<String> recorded,
            List<String> notes) {
        List<String> open = new ArrayList<>(OpenPoints.of(plant, Integer.MAX_VALUE));
        open.addAll(notes);
        SiteVerdict verdict = plant.verdict();
        return new SiteRecord(
                plant.refitted().project().name(),
                revision,
                date,
                projectSha256,
                verdict.words(),
                verdict.meaning(),
                verdict == SiteVerdict.AS_PLANNED,
                MeasuredPlantText.counts(plant),
                MeasuredPlantText.coverage(plant.coverage()),
                days,
                files,
                recorded,
                plant.discrepancies().stream()
                        .filter(each -> each.weight() != Weight.LESS)
                        .map(DiscrepancyRow::of)
                        .toList(),
                plant.count(Weight.LESS),
                plant.broken().stream().map(BrokenRule::message).toList(),
                MeasuredPlantText.limitsWords(plant),
                gain.lines(),
                plant.wrongPlates().stream().map(Plate::of).toList(),
                MeasuredPlantText.takenWords(plant),
                open);
    }

    /** Headers first; what is less than stated, too. */
    public static List<List<String>> values(MeasuredPlant plant) {
        List<List<String>> values = new ArrayList<>();
        values.add(List.of(
                "weight",
                "where",
                "quantity",
                "planned",
                "measured",
                "may be off by",
                "likely cause",
                "look at first",
                "date",
                "meter",
                "stands in"));
        plant.discrepancies().stream()
                .map(DiscrepancyRow::of)
                .forEach(each -> values.add(List.of(
                        each.weightWord(),
                        each.subject(),
                        each.quantity(),
                        each.planned(),
                        each.measured(),
                        each.within(),
                        each.cause(),
                        each.lookAt(),
                        each.date(),
                        each.meter(),
                        each.at())));
        return values;
    }
}
