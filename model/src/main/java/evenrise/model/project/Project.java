package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What is to be fed and what feeds it. */
public record Project(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "What the project is called", atLeast = 1)
        String name,

        @Field(meaning = "What feeds every panel") Supply supply,

        @Field(
                meaning = "A breaker closes within this time of its nominal step, either side",
                min = 0,
                max = 60,
                byDefault = "0")
        double timingToleranceSeconds,

        @Field(meaning = "Latest allowed switch-on", min = 0, max = 86_400, optional = true)
        OptionalDouble maxDurationSeconds,

        @Field(meaning = "Panels, in the order people expect them", atLeast = 1)
        List<Panel> panels,

        @Field(meaning = "Kinds of control board", byDefault = "[]")
        List<BoardType> boardTypes,

        @Field(meaning = "Control boards", byDefault = "[]") List<Board> boards,

        @Field(meaning = "Shutdown groups", byDefault = "[]")
        List<ShutdownGroup> shutdownGroups,

        @Field(meaning = "Loads, one a breaker", atLeast = 1)
        List<Load> loads,

        @Field(meaning = "What each figure of a plan costs", optional = true)
        ObjectiveWeights objective,

        @Field(meaning = "What the electrical review needs to know", optional = true)
        Optional<Electrical> electrical,

        @Field(meaning = "What the control does when something happens", optional = true)
        Optional<Behaviour> behaviour,

        @Field(meaning = "What can be bought and what work costs", optional = true)
        Optional<Catalogue> catalogue,

        @Field(meaning = "How a real switch-on differs from the worst one", optional = true)
        Optional<Scatter> scatter) {

    /** The format that this software reads and writes. */
    public static final String FORMAT = "evenrise-project/1";

    public Project {
        objective = objective == null ? ObjectiveWeights.DEFAULT : objective;
        Contract.check(
                Project.class,
                format,
                name,
                supply,
                timingToleranceSeconds,
                maxDurationSeconds,
                panels,
                boardTypes,
                boards,
                shutdownGroups,
                loads,
                objective,
                electrical,
                behaviour,
                catalogue,
                scatter);
        panels = List.copyOf(panels);
        boardTypes = List.copyOf(boardTypes);
        boards = List.copyOf(boards);
        shutdownGroups = List.copyOf(shutdownGroups);
        loads = List.copyOf(loads);
    }

    /** A project without data for the electrical review. */
    public Project(
            String format,
            String name,
            Supply supply,
            double timingToleranceSeconds,
            OptionalDouble maxDurationSeconds,
            List<Panel> panels,
            List<BoardType> boardTypes,
            List<Board> boards,
            List<ShutdownGroup> shutdownGroups,
            List<Load> loads,
            ObjectiveWeights objective) {
        this(
                format,
                name,
                supply,
                timingToleranceSeconds,
                maxDurationSeconds,
                panels,
                boardTypes,
                boards,
                shutdownGroups,
                loads,
                objective,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** The same project with a control that behaves so. */
    public Project behaving(Behaviour stated) {
        return new Project(
                format,
                name,
                supply,
                timingToleranceSeconds,
                maxDurationSeconds,
                panels,
                boardTypes,
                boards,
                shutdownGroups,
                loads,
                objective,
                electrical,
                Optional.of(stated),
                catalogue,
                scatter);
    }

    /** The same loads and rules on other panels and boards, planned for other costs. */
    public Project rebuilt(List<Panel> otherPanels, List<Board> otherBoards, ObjectiveWeights weights) {
        return new Project(
                format,
                name,
                supply,
                timingToleranceSeconds,
                maxDurationSeconds,
                otherPanels,
                boardTypes,
                otherBoards,
                shutdownGroups,
                loads,
                weights,
                electrical,
                behaviour,
                catalogue,
                scatter);
    }

    /** The same project with other loads. */
    public Project withLoads(List<Load> others) {
        return new Project(
                format,
                name,
                supply,
                timingToleranceSeconds,
                maxDurationSeconds,
                panels,
                boardTypes,
                boards,
                shutdownGroups,
                others,
                objective,
                electrical,
                behaviour,
                catalogue,
                scatter);
    }

    /** What the control does, as stated or by default. */
    public Behaviour behaviourOrDefault() {
        return behaviour.orElse(Behaviour.DEFAULT);
    }
}
