package evenrise.solver.app;

import evenrise.model.contract.Words;
import evenrise.model.intake.Mapping;
import evenrise.model.plan.Finding;
import evenrise.model.project.Project;
import evenrise.solver.intake.EquipmentList;
import evenrise.solver.intake.ReadValue;
import evenrise.solver.report.IntakeText;
import evenrise.solver.report.ReadingText;
import java.util.List;
import java.util.Optional;

/**
 * An equipment list as a project.
 *
 * @since 0.1.0
 */
public final class ImportResult implements Listing {
    private final EquipmentList read;
    private final Optional<String> refusal;

    ImportResult(EquipmentList read, Optional<String> refusal) {
        this.read = read;
        this.refusal = refusal;
    }

    /** Empty where no piece could be taken over. */
    public Optional<Project> project() {
        return read.project();
    }

    /** All that there is to tell of the list, in parts: problems, guesses, questions and so on by their kind. */
    public List<Finding> findings() {
        return read.findings();
    }

    /** Rows that could not be taken over, each with its place and what would help. */
    public List<String> problems() {
        return read.problems();
    }

    /** What somebody has to decide. */
    public List<String> questions() {
        return read.questions();
    }

    /** What was taken for granted, for confirmation. */
    public List<String> guesses() {
        return read.guesses();
    }

    /** How each column was read, in order. */
    public List<ListColumn> columns() {
        return read.columns().stream()
                .map(each -> new ListColumn(
                        each.sheet(), each.letters(), each.header(), each.means(), each.unit(), Words.word(each.by())))
                .toList();
    }

    /** Every text that was guessed, is asked about or could not be read. */
    public List<ListText> texts() {
        return read.values().stream()
                .filter(each -> each.how() != ReadValue.How.STATED)
                .map(each -> new ListText(
                        each.of(), each.written(), each.name(), each.reads(), Words.word(each.how()), each.rows()))
                .toList();
    }

    /** Says in full how the list was read; a person corrects it, and reads with it again. */
    public Mapping mapping() {
        return read.mapping();
    }

    /** Why nothing is written; empty where the project is. */
    public Optional<String> refusal() {
        return refusal;
    }

    /** How each column and each kind of text was read, as tables; a line each. */
    public List<String> explanation(TextStyle style) {
        return ReadingText.lines(read, style.paint());
    }

    @Override
    public List<String> text(TextStyle style) {
        return IntakeText.lines(read, style.isFull(), style.paint());
    }
}
