package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What is to be fed and what feeds it. */
@FileRecord
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
        Optional<Scatter> scatter,

        @Field(meaning = "Cautions for whoever works from this project, by the program that wrote it", optional = true)
        List<String> cautions,

        @Field(meaning = "What stands between the supply and the panels, and further sources", byDefault = "[]")
        List<DistributionNode> nodes,

        @Field(meaning = "What one command each switches", byDefault = "[]")
        List<SwitchedSystem> systems,

        @Field(meaning = "Which systems may start while others start or run", byDefault = "\"one-at-a-time\"")
        Overlap overlap,

        @Field(meaning = "What runs when, and how much of it", byDefault = "[]")
        List<Scene> scenes,

        @Field(meaning = "Room to be left in every panel that states none of its own", optional = true)
        Optional<Spare> spare,

        @Field(
                meaning =
                        "What loads have where they state nothing; the loads of a project that was read have it already",
                optional = true)
        List<LoadDefault> defaults,

        @Field(meaning = "How long work on the plant takes, by kind", optional = true)
        Optional<WorkTimes> work,

        @Field(meaning = "Loads of which nobody knows yet how many there are", byDefault = "[]")
        List<QuantityRange> quantities)
        implements ProjectBuilder.With {

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
                scatter,
                cautions,
                nodes,
                systems,
                overlap,
                scenes,
                spare,
                defaults,
                work,
                quantities);
        panels = List.copyOf(panels);
        boardTypes = List.copyOf(boardTypes);
        boards = List.copyOf(boards);
        shutdownGroups = List.copyOf(shutdownGroups);
        loads = List.copyOf(loads);
        cautions = List.copyOf(cautions);
        nodes = List.copyOf(nodes);
        systems = List.copyOf(systems);
        scenes = List.copyOf(scenes);
        defaults = List.copyOf(defaults);
        quantities = List.copyOf(quantities);
    }

    /** What the control does, as stated or by default. */
    public Behaviour behaviourOrDefault() {
        return behaviour.orElse(Behaviour.DEFAULT);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ProjectBuilder builder() {
        return Defaults.into(ProjectBuilder.unset(), Project.class).format(FORMAT);
    }

    /** Whether commands of several systems have clocks of their own. */
    public boolean hasClocks() {
        return !systems.isEmpty() && overlap != Overlap.TOGETHER;
    }

    /** Room to be left in a panel: its own word, else the project's. */
    public Optional<Spare> spareIn(Panel panel) {
        return panel.spare().or(() -> spare);
    }
}
