package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.observation.ClosingFit;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.observation.RecordedStart;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** A recorded start beside a plan, for a screen. */
public final class ObservationText {
    private static final int MOST_NAMED = 12;

    private ObservationText() {}

    /**
     * The first recording as it is, and what further ones of the same start say together with it.
     *
     * @param isFull whether starts that are as planned stand, too
     */
    public static List<String> lines(
            SeenStart first, List<SeenStart> again, String place, List<String> columns, boolean isFull, Paint paint) {
        Observation seen = first.seen();
        List<WaveStart> waves = first.waves();
        List<List<String>> sections = new ArrayList<>();
        sections.add(head(seen, place, columns, paint));
        if (!seen.isRecognised()) {
            sections.add(RepeatedText.lines(first, again, paint));
            sections.add(CautionText.lines(Cautions.ALL, paint));
            return Sections.joined(
                    sections.stream().filter(each -> !each.isEmpty()).toList());
        }
        sections.add(equipment(seen, paint));
        Section starts =
                new Section(paint, isFull ? "Starts" : "Starts that are other than planned, or cannot be told");
        Table table = table(seen, isFull);
        if (table.isEmpty()) {
            starts.text("None.");
        } else {
            starts.table(table);
            lookAt(seen, starts);
        }
        sections.add(starts.lines());
        if (!seen.unknown().isEmpty()) {
            sections.add(unknown(seen, paint));
        }
        sections.add(further(seen, isFull, paint));
        ClosingFit.of(seen).ifPresent(fit -> sections.add(ClosingText.lines(fit, seen.intervalSeconds(), paint)));
        if (!waves.isEmpty()) {
            sections.add(waves(waves, paint));
        }
        sections.add(RepeatedText.lines(first, again, paint));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections.stream().filter(each -> !each.isEmpty()).toList());
    }

    private static List<String> head(Observation seen, String place, List<String> columns, Paint paint) {
        Section section = new Section(paint, "Recorded start at " + place);
        section.text("Read: " + String.join("; ", columns) + ".");
        if (!seen.isRecognised()) {
            return section.text(
                            Tone.BAD,
                            "This does not look like a start by this plan: of " + seen.visible()
                                    + " starts that could be"
                                    + " seen " + seen.count(Finding.AS_PLANNED)
                                    + " are there in time with their current"
                                    + " and " + seen.count(Finding.OTHER_SIZE) + " with another, which counts half; "
                                    + seen.unknown().size() + " recorded steps stand for no load, and "
                                    + seen.count(Finding.NOT_RECORDED)
                                    + " starts lie outside the recording. Six in ten must fit. Maybe another place, another"
                                    + " command or another plan was recorded, or the recording is too coarse ("
                                    + Decimals.fixed(seen.intervalSeconds(), 3) + " s between samples).")
                    .lines();
        }
        String found = seen.isAsPlanned()
                ? "Nothing that could be seen is other than planned."
                : "Something is other than planned.";
        section.text(seen.isAsPlanned() ? Tone.PLAIN : Tone.BAD, found);
        Map<Finding, Long> counts = seen.starts().stream()
                .collect(Collectors.groupingBy(ObservedStart::finding, TreeMap::new, Collectors.counting()));
        section.text(Phrase.counted(seen.starts().size(), "start") + " by the plan: "
                + counts.entrySet().stream()
                        .map(each -> each.getValue() + " " + each.getKey().words())
                        .collect(Collectors.joining(", "))
                + ".");
        section.text("The command was given at " + Decimals.fixed(seen.clock().offsetSeconds(), 3)
                + " s of the recording, whose clock runs "
                + Decimals.fixed(1e6 * (seen.clock().rate() - 1), 0)
                + " millionths fast; " + Decimals.fixed(seen.intervalSeconds(), 3) + " s between samples; noise "
                + seen.sigmaAmps().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(each -> each.getKey() + " " + Decimals.fixed(each.getValue(), 3) + " A")
                        .collect(Collectors.joining(", "))
                + ".");
        section.text("Sizes are told against stated idle currents, which may be off by their spread (12 %, common"
                + " practice, no source); loads that draw alike cannot be told apart but by their time, so two of them"
                + " that are exchanged look as planned.");
        return section.lines();
    }

    /** Clamps and boards. */
    private static List<String> equipment(Observation seen, Paint paint) {
        Section section = new Section(paint, "Recorder and boards");
        seen.channels().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(each -> section.item("Phase " + each.getKey() + " seems to be on the channel of phase "
                        + each.getValue() + ": look at the clamps first, then at the rotation."));
        seen.scales().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(each -> section.item("Readings of phase " + each.getKey() + " were multiplied by "
                        + Decimals.fixed(each.getValue(), 2) + " to be what is expected: look at the clamp's range and"
                        + " direction, and whether it is closed."));
        seen.settings().forEach(each -> section.item(setting(each)));
        return section.lines().size() > 1 ? section.lines() : List.of();
    }

    private static String setting(BoardSetting setting) {
        return "Board " + setting.id() + " seems to be set to start delay "
                + Decimals.toThousandths(setting.delaySeconds()) + " s and step "
                + Decimals.toThousandths(setting.betweenSeconds())
                + " s: look at its switches. Below, its loads are judged by that.";
    }

    private static Table table(Observation seen, boolean isFull) {
        Table table = new Table()
                .words("Load")
                .words("Found")
                .number("Planned s")
                .number("Seen s")
                .number("Planned A")
                .number("Seen A")
                .number("Sure %");
        for (ObservedStart each : seen.starts()) {
            if (isFull || each.finding() != Finding.AS_PLANNED && each.finding() != Finding.NOT_RECORDED) {
                table.row(
                        each.finding().isDifference() ? Tone.BAD : Tone.PLAIN,
                        String.join(" + ", each.expected().loads()),
                        found(each),
                        Decimals.fixed(each.expected().seconds(), 2),
                        each.planSeconds().isPresent()
                                ? Decimals.fixed(each.planSeconds().getAsDouble(), 2)
                                : Numbers.NONE,
                        byPhase(each.expected().amps()),
                        each.recorded().map(ObservationText::changes).orElse(Numbers.NONE),
                        each.finding() == Finding.AS_PLANNED ? "" : sure(each.confidence()));
            }
        }
        return table;
    }

    private static String byPhase(Map<Phase, Double> amps) {
        return amps.entrySet().stream()
                .filter(each -> each.getValue() > 0)
                .map(each -> each.getKey() + " " + Decimals.fixed(each.getValue(), 2))
                .collect(Collectors.joining(" "));
    }

    private static String changes(RecordedStart start) {
        return start.steps().entrySet().stream()
                .map(each ->
                        each.getKey() + " " + Decimals.fixed(each.getValue().amps(), 2))
                .collect(Collectors.joining(" "));
    }

    private static String found(ObservedStart each) {
        return each.finding().words()
                + each.swappedWith()
                        .map(other -> " with " + String.join(" + ", other.loads()))
                        .orElse("");
    }

    private static String sure(double confidence) {
        return Decimals.fixed(100 * confidence, 0);
    }

    /** What to look at first, of each kind that was found. */
    private static void lookAt(Observation seen, Section section) {
        for (Finding each : Finding.values()) {
            String what = lookAt(each);
            if (seen.count(each) > 0 && !what.isEmpty()) {
                section.item(each.words() + ": look at " + what + ".");
            }
        }
    }

    private static String lookAt(Finding finding) {
        return switch (finding) {
            case AS_PLANNED, NOT_RECORDED -> "";
            case OTHER_SIZE -> "the gear's plate and what else is on its circuit; then the project's idle_a";
            case OTHER_TIME -> "its output and the board's setting";
            case SWAPPED -> "the control leads";
            case OTHER_PHASES -> "its slot, and the wires between breaker and load";
            case OTHER_TIME_AND_PHASES -> "its slot and its output; maybe it is another load";
            case MISSING -> "its breaker, the control lead, the gear's own switch";
            case CANNOT_TELL, TOO_SMALL -> "it alone: switch it by itself, or clamp its own circuit";
        };
    }

    private static List<String> unknown(Observation seen, Paint paint) {
        Section section = new Section(paint, "Recorded, and of no load of the plan");
        for (RecordedStart each : seen.unknown()) {
            boolean falls = each.steps().values().stream().allMatch(change -> change.amps() < 0);
            section.item(Decimals.fixed(seen.clock().plan(each.seconds()), 2) + " s: " + changes(each) + " A"
                    + (falls ? ", something goes off" : ""));
        }
        return section.lines();
    }

    private static List<String> further(Observation seen, boolean isFull, Paint paint) {
        List<String> lines = FurtherReadingsText.lines(seen.further(), isFull ? Integer.MAX_VALUE : MOST_NAMED);
        if (lines.isEmpty()) {
            return List.of();
        }
        Section section = new Section(paint, "Further readings").text(lines.get(0));
        lines.subList(1, lines.size()).forEach(section::item);
        return section.lines();
    }

    private static List<String> waves(List<WaveStart> waves, Paint paint) {
        Table table = new Table()
                .words("Load")
                .words("Phase")
                .number("Seen s")
                .number("Peak A")
                .number("Stated A")
                .number("Half-life ms")
                .number("Stated ms");
        for (WaveStart each : waves) {
            boolean isMore = each.fit().peakAmps() > each.statedPeakAmps().orElse(Double.POSITIVE_INFINITY);
            table.row(
                    isMore ? Tone.BAD : Tone.PLAIN,
                    each.load(),
                    each.phase().name(),
                    Decimals.fixed(each.planSeconds(), 3),
                    Decimals.fixed(each.fit().peakAmps(), 1),
                    each.statedPeakAmps().isPresent()
                            ? Decimals.fixed(each.statedPeakAmps().getAsDouble(), 1)
                            : Numbers.NONE,
                    each.fit().halfMillis().isPresent()
                            ? Decimals.fixed(each.fit().halfMillis().getAsDouble(), 1)
                            : Numbers.NONE,
                    each.statedPeakAmps().isPresent() ? Decimals.fixed(each.statedHalfMillis(), 1) : Numbers.NONE);
        }
        return new Section(paint, "Inrush of loads that come on alone, from the wave")
                .table(table)
                .text("A peak is that of this closing: at another moment of the wave, or of the year, it may be"
                        + " higher, so it lowers nothing that is stated.")
                .lines();
    }
}
