package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where each load sits and when it comes on, with the figures that follow. */
@FileRecord
public record Plan(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "Cautions for whoever works from this plan", byDefault = "[]")
        List<String> cautions,

        @Field(meaning = "How each board is set") List<BoardSetting> boards,
        @Field(meaning = "Where each load sits") List<Assignment> assignments,

        @Field(meaning = "The figures, as the rules package computes them", optional = true)
        Optional<Metrics> metrics,

        @Field(meaning = "Every broken hard rule", byDefault = "[]")
        List<BrokenRule> violations,

        @Field(meaning = "What made the plan", optional = true)
        Optional<MadeBy> madeBy,

        @Field(meaning = "Proven lower bounds on the objective and its parts", optional = true)
        Optional<Bounds> bounds,

        @Field(meaning = "How far the objective is above its bound, over the objective", optional = true, least = 0)
        OptionalDouble gapPercent,

        @Field(meaning = "Whether the objective is proven to be the least there is", byDefault = "false")
        boolean optimal,

        @Field(meaning = "What the electrical review says", optional = true)
        Optional<Review> review,

        @Field(meaning = "Peaks of the supply when something happens, as docs/events.md defines them", optional = true)
        List<EventPeak> eventPeaks,

        @Field(meaning = "What the peaks rest on, and the peaks over the supply's voltages", optional = true)
        Optional<PeakBasis> peakBasis,

        @Field(
                meaning = "What all of this comes to: what is broken, what was checked, what was guessed",
                optional = true)
        Optional<Assessment> assessment)
        implements PlanBuilder.With {

    /** The format that this software reads and writes. */
    public static final String FORMAT = "evenrise-plan/1";

    public Plan {
        Contract.check(
                Plan.class,
                format,
                cautions,
                boards,
                assignments,
                metrics,
                violations,
                madeBy,
                bounds,
                gapPercent,
                optimal,
                review,
                eventPeaks,
                peakBasis,
                assessment);
        cautions = List.copyOf(cautions);
        boards = List.copyOf(boards);
        assignments = List.copyOf(assignments);
        violations = List.copyOf(violations);
        eventPeaks = List.copyOf(eventPeaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static PlanBuilder builder() {
        return Defaults.into(PlanBuilder.unset(), Plan.class).format(FORMAT);
    }
}
