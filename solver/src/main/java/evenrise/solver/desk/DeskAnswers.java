package evenrise.solver.desk;

import evenrise.model.intake.Mapping;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Metrics;
import evenrise.model.project.Phase;
import evenrise.model.project.Role;
import evenrise.solver.app.ListColumn;
import evenrise.solver.app.ListText;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** What the desk tells its windows, as they are written: the types of its interface. */
public final class DeskAnswers {
    private DeskAnswers() {}

    /**
     * What lies on the desk.
     *
     * @param revision rises with every change
     * @param folder its own name, without those it lies in
     * @param since where the window has said what it shows: the revision from which only differences are told; of panels,
     *     boards and loads those that are another, of curves none where they are the same
     * @param undo what would be taken back; empty where there is nothing
     * @param plan empty where there is no project yet
     * @param told what windows are to be told once more: what another program did to the files
     */
    public record DeskSheet(
            long revision,
            OptionalLong since,
            String version,
            String folder,
            String projectFile,
            String planFile,
            Optional<String> undo,
            Optional<String> redo,
            Optional<PlanSheet> plan,
            List<String> told,
            List<String> cautions) {}

    /**
     * A project with its plan, judged.
     *
     * @param judged what the assessment says of all of it, the electrical checks among it; empty until they are done
     * @param unplaced loads that have no place, in the project's order
     */
    public record PlanSheet(
            String name,
            Metrics metrics,
            List<BrokenRule> violations,
            Optional<String> judged,
            List<String> phases,
            List<PanelView> panels,
            List<BoardView> boards,
            List<LoadView> loads,
            List<String> unplaced,
            List<CurveView> curves) {
        PlanSheet withJudged(Optional<String> words) {
            return new PlanSheet(name, metrics, violations, words, phases, panels, boards, loads, unplaced, curves);
        }
    }

    /**
     * A panel.
     *
     * @param slotPhases phase of each slot from 1
     * @param isTwoSided whether odd slots are on the left and even ones on the right
     * @param runningAmps rms by phase of {@code phases}
     */
    public record PanelView(
            String id,
            int slots,
            boolean isTwoSided,
            List<Phase> slotPhases,
            List<Integer> reservedSlots,
            double ratedAmps,
            List<Phase> phases,
            List<Double> runningAmps,
            double imbalancePercent,
            double neutralAmps,
            List<Double> peakAmps,
            OptionalDouble inrushLimitAmps) {}

    /**
     * A board.
     *
     * @param isTimedByOutput whether each output has a time of its own
     * @param delaysSeconds start delays that its type offers
     */
    public record BoardView(
            String id,
            String panel,
            String type,
            int outputs,
            boolean isTimedByOutput,
            List<Double> delaysSeconds,
            List<Double> stepsSeconds,
            OptionalDouble delaySeconds,
            OptionalDouble stepSeconds,
            Optional<String> after) {}

    /** A load, with its place where it has one. */
    public record LoadView(
            String id,
            String name,
            Role role,
            int poles,
            double breakerAmps,
            double runningAmps,
            boolean switched,
            Optional<String> group,
            boolean pinned,
            Optional<String> panel,
            List<Integer> slots,
            List<Phase> phases,
            Optional<String> board,
            OptionalInt output,
            OptionalDouble onSeconds,
            double settleSeconds) {}

    /** Instantaneous current of the supply on one phase over time, as one command is carried out. */
    public record CurveView(Optional<String> system, String phase, List<Double> seconds, List<Double> amps) {}

    /**
     * A place for the load in the hand.
     *
     * @param slots first slots that differ in nothing but their number
     * @param breaks how many places it would break that are kept now
     * @param mends how many that are broken now would be kept
     * @param words the first of what it would break
     */
    public record PlaceView(
            Optional<String> panel,
            List<Integer> slots,
            Optional<String> board,
            OptionalInt output,
            List<Phase> phases,
            int breaks,
            int mends,
            List<String> words,
            double objectiveChange,
            double peakChangeAmps) {}

    /** The places of a load in the hand. */
    public record HangingView(String load, long revision, List<PlaceView> places) {}

    /** Lines of text. */
    public record Lines(List<String> lines) {}

    /** Why something was not done; each with what would help. */
    public record Refusal(List<String> messages) {}

    /** Something that happened: {@code changed}, {@code judged}, {@code search} or {@code told}. */
    public record DeskEvent(String kind, long revision, String words) {}

    /** A column of a list. */
    public record ColumnView(
            String path,
            String kind,
            boolean isRequired,
            String unit,
            String expected,
            String otherwise,
            String meaning) {}

    /**
     * One of the project's lists.
     *
     * @param isSingle whether it is an object of which there is one row at most
     */
    public record TableView(
            long revision,
            String list,
            boolean isSingle,
            List<ColumnView> columns,
            List<List<String>> rows,
            List<ColumnView> further) {}

    /** What is wrong in a cell, or in the whole where there is none. */
    public record MisfitView(Optional<String> id, Optional<String> column, String message) {}

    /** What came of edited cells: everything was taken in where nothing is wrong, else nothing. */
    public record EditedView(boolean isTaken, long revision, List<MisfitView> misfits) {}

    /**
     * How a pasted list was read.
     *
     * @param loads that it makes; 0 where it makes no project
     * @param unswitched names of loads that nothing would switch
     * @param texts that were guessed, are asked about or could not be read
     * @param meanings what a column may mean, by which a mapping names it
     * @param mapping says in full how it was read, to be corrected and sent back
     */
    public record ReadListView(
            int loads,
            List<String> problems,
            List<String> questions,
            List<String> guesses,
            List<String> unswitched,
            List<ListColumn> columns,
            List<ListText> texts,
            List<String> meanings,
            Mapping mapping,
            List<String> lines) {}

    /** A plan that was kept aside, or the one that lies on the desk. */
    public record BranchView(
            String name,
            boolean isOnTheDesk,
            boolean fits,
            Optional<Metrics> metrics,
            int placed,
            int moved,
            String words) {}

    /** A load or a board that two plans have otherwise, in words. */
    public record MovedView(String id, String left, String right) {}

    /**
     * Two plans side by side.
     *
     * @param same how many loads are at the same place and time in both
     */
    public record SideBySide(Metrics left, Metrics right, List<MovedView> loads, List<MovedView> settings, int same) {}

    /** Plans beside one another. */
    public record BranchesView(List<BranchView> branches) {}

    /**
     * A search in the background.
     *
     * @param state none, running, found or failed
     * @param objective of the best plan so far, in ampere-equivalents
     * @param provenObjective what is proven that no plan can stay below; 0 where nothing is
     * @param isOfNow whether what it searches is what lies on the desk
     */
    public record SearchView(
            String state,
            double elapsedSeconds,
            long moves,
            OptionalDouble objective,
            double provenObjective,
            OptionalDouble peakInrushAmps,
            OptionalInt hardViolations,
            boolean isOfNow,
            String words) {}
}
