package evenrise.solver.report;

import evenrise.model.plan.Cautions;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Practice;
import evenrise.model.sizing.Answer;
import evenrise.model.sizing.Part;
import evenrise.model.sizing.Proposal;
import evenrise.model.sizing.Size;
import evenrise.model.sizing.Sizes;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Proposed sizes, for other programs.
 *
 * @param format name and version of this sheet as JSON
 * @param practice of the project; without one nothing is sized
 * @param hasPlan whether it is known what hangs where
 * @param open what the checks still say with all proposals taken over
 */
public record SizesFile(
        String format,
        String project,
        Optional<Practice> practice,
        boolean hasPlan,
        List<Sized> proposals,
        List<Remark> open,
        List<String> cautions) {
    public static final String FORMAT = "evenrise-sizes/1";

    /**
     * A size for one place.
     *
     * @param part what is sized
     * @param place load, panel or node
     * @param field of the project file that states it
     * @param proposed empty where none is
     * @param differs whether the project states another size, or none
     * @param forVoltageDrop whether voltage drop asks for more than the current does
     * @param notSized what the project is to state, or why no size will do; empty where one is proposed
     */
    public record Sized(
            Part part,
            String place,
            String label,
            String field,
            Optional<Step> stated,
            Optional<Step> proposed,
            boolean differs,
            boolean forVoltageDrop,
            List<Asked> criteria,
            String notSized) {
        static Sized of(Proposal each) {
            return new Sized(
                    each.part(),
                    each.place(),
                    each.label(),
                    each.part().field(),
                    each.stated().map(size -> Step.of(each.part(), size)),
                    each.proposed().map(size -> Step.of(each.part(), size)),
                    each.differs(),
                    each.isForVoltageDrop(),
                    each.answers().stream()
                            .map(answer -> Asked.of(each.part(), answer))
                            .toList(),
                    each.notSized());
        }
    }

    /**
     * A standard size.
     *
     * @param text for people
     * @param value that the field takes, in {@code unit}; empty for a cable
     * @param unit empty for a cable
     * @param size of a line conductor of a cable
     * @param sets of a cable
     */
    public record Step(String text, OptionalDouble value, String unit, Optional<String> size, OptionalInt sets) {
        static Step of(Part part, Size size) {
            return size.conductorName()
                    .map(name -> new Step(
                            size.text(), OptionalDouble.empty(), "", Optional.of(name), OptionalInt.of(size.sets())))
                    .orElseGet(() -> new Step(
                            size.text(),
                            OptionalDouble.of(size.amount()),
                            part == Part.TRANSFORMER ? "kVA" : "A",
                            Optional.empty(),
                            OptionalInt.empty()));
        }
    }

    /**
     * What one criterion asks for.
     *
     * @param least size that satisfies it by itself; empty where none does
     * @param below the last size tried that does not
     * @param why it does not
     * @param figure at the size proposed
     */
    public record Asked(String criterion, Optional<Step> least, Optional<Step> below, String why, String figure) {
        static Asked of(Part part, Answer answer) {
            return new Asked(
                    answer.criterion(),
                    answer.least().map(size -> Step.of(part, size)),
                    answer.below().map(size -> Step.of(part, size)),
                    answer.why(),
                    answer.figure());
        }
    }

    public static SizesFile of(Sizes sizes, Optional<String> place) {
        return new SizesFile(
                FORMAT,
                sizes.taken().name(),
                sizes.taken().electrical().flatMap(Electrical::practice),
                sizes.hasPlan(),
                sizes.proposals().stream()
                        .filter(each -> place.isEmpty() || each.place().equals(place.get()))
                        .map(Sized::of)
                        .toList(),
                sizes.open(),
                Cautions.ALL);
    }
}
