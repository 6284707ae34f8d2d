package evenrise.model.sizing;

import java.util.List;
import java.util.Optional;

/**
 * A size for one place, for a person to take over or not.
 *
 * @param place load, panel or node
 * @param label of it for people
 * @param stated in the project
 * @param proposed the least standard one that every criterion is satisfied with
 * @param answers of each criterion that could be asked
 * @param notSized what the project is to state, or why no size will do; empty where one is proposed
 */
public record Proposal(
        Part part,
        String place,
        String label,
        Optional<Size> stated,
        Optional<Size> proposed,
        List<Answer> answers,
        String notSized) {
    private static final double SAME = 1e-9;

    public Proposal {
        answers = List.copyOf(answers);
    }

    public Optional<Answer> answer(String criterion) {
        return answers.stream()
                .filter(each -> each.criterion().equals(criterion))
                .findFirst();
    }

    /** Whether voltage drop asks for more than the current does. */
    public boolean isForVoltageDrop() {
        Optional<Size> drop = answer(Criteria.VOLTAGE_DROP).flatMap(Answer::least);
        Optional<Size> current = answer(Criteria.CURRENT).flatMap(Answer::least);
        return drop.isPresent()
                && current.isPresent()
                && drop.get().amount() > current.get().amount() + SAME;
    }

    /** Whether the project states another size. */
    public boolean differs() {
        return proposed.isPresent()
                && stated.filter(size -> size.text().equals(proposed.get().text()))
                        .isEmpty();
    }
}
