package evenrise.model.measured;

import evenrise.model.contract.Decimals;
import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.observation.RecordedStart;
import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a recorded start says is other than planned, beside what sheets say. */
public final class RecordedDiscrepancies {
    private RecordedDiscrepancies() {}

    /** @param file the recording's, for messages; nothing where it was not recognised as the start of this plan */
    public static List<Discrepancy> of(Observation seen, String file, Optional<String> date) {
        List<Discrepancy> found = new ArrayList<>();
        if (!seen.isRecognised()) {
            return found;
        }
        Visit visit = new Visit(date, Meter.usual("recorder"), file);
        seen.starts().stream()
                .filter(each -> each.finding().isDifference())
                .forEach(each -> found.add(of(each, visit)));
        for (BoardSetting each : seen.settings()) {
            found.add(fault(
                    each.id(),
                    "it seems to be set to start delay " + Decimals.toThousandths(each.delaySeconds()) + " s and step "
                            + Decimals.toThousandths(each.betweenSeconds()) + " s",
                    "its switches",
                    visit));
        }
        for (RecordedStart each : seen.unknown()) {
            found.add(fault(
                    "unknown load",
                    "something comes on or goes off at "
                            + Decimals.fixed(seen.clock().plan(each.seconds()), 2) + " s that no plan has",
                    "what else hangs on it",
                    visit));
        }
        return found;
    }

    private static Discrepancy of(ObservedStart start, Visit visit) {
        boolean isSize = start.finding() == Finding.OTHER_SIZE;
        boolean isTime = start.planSeconds().isPresent() && !isSize;
        Optional<Phase> phase = isSize
                ? start.expected().readAmps().entrySet().stream()
                        .max(Map.Entry.comparingByValue())
                        .map(Map.Entry::getKey)
                : Optional.empty();
        OptionalDouble planned = isSize
                ? OptionalDouble.of(start.expected().readAmps().get(phase.orElseThrow()))
                : isTime ? OptionalDouble.of(start.expected().seconds()) : OptionalDouble.empty();
        OptionalDouble measured = isSize
                ? start
                        .recorded()
                        .flatMap(each -> Optional.ofNullable(each.steps().get(phase.orElseThrow())))
                        .stream()
                        .mapToDouble(RecordedStart.Change::amps)
                        .findFirst()
                : isTime ? start.planSeconds() : OptionalDouble.empty();
        return new Discrepancy(
                isSize ? Weight.DIFFERS : Weight.FAULT,
                String.join(" + ", start.expected().loads()),
                phase,
                isSize ? MeasuredQuantity.IDLE : MeasuredQuantity.ON,
                planned,
                measured,
                0,
                start.finding().words()
                        + start.swappedWith()
                                .map(other -> " with " + String.join(" + ", other.loads()))
                                .orElse("")
                        + ", " + Decimals.fixed(100 * start.confidence(), 0) + " % sure",
                isSize ? "the gear's plate, and what else is on its circuit" : "its breaker, its output, its slot",
                visit);
    }

    private static Discrepancy fault(String subject, String cause, String lookAt, Visit visit) {
        return new Discrepancy(
                Weight.FAULT,
                subject,
                Optional.empty(),
                MeasuredQuantity.ON,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                cause,
                lookAt,
                visit);
    }
}
