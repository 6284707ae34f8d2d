package evenrise.solver.app;

import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.portfolio.PlanTask;
import evenrise.solver.portfolio.ReworkTask;
import evenrise.solver.portfolio.ScenarioTask;
import evenrise.solver.portfolio.TrialTask;
import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.util.Map;

/** What a worker does, by the word that a job's bytes begin with. */
final class KindsOfWork implements GridWork {
    private final Map<String, GridWork> kinds;

    KindsOfWork(PlannerSource planners) {
        kinds = Map.of(
                PlanTask.KIND, new PlanWork(planners),
                TrialTask.KIND, new TrialWork(),
                ReworkTask.KIND, new ReworkWork(planners),
                ScenarioTask.KIND, new ScenarioWork());
    }

    @Override
    public byte[] output(byte[] input, StopSignal stop) throws InvalidInput {
        GridWork work = kinds.get(kind(input));
        if (work == null) {
            throw new InvalidInput("nobody here knows such work");
        }
        return work.output(input, stop);
    }

    private static String kind(byte[] input) throws InvalidInput {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(input))) {
            return in.readUTF();
        } catch (IOException e) {
            throw new InvalidInput("no work: " + e.getMessage());
        }
    }
}
