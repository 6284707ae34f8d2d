package evenrise.solver.grid.ignite;

import java.util.List;
import java.util.Map;
import org.apache.ignite.cluster.ClusterNode;
import org.apache.ignite.compute.ComputeJob;
import org.apache.ignite.compute.ComputeJobResult;
import org.apache.ignite.compute.ComputeJobResultPolicy;
import org.apache.ignite.compute.ComputeTask;

/** Has one worker do one job. Whether it is tried again, the driver decides. */
final class OneJob implements ComputeTask<Void, byte[]> {
    private static final long serialVersionUID = 1;

    private final transient byte[] input;

    OneJob(byte[] input) {
        this.input = input;
    }

    @Override
    public Map<? extends ComputeJob, ClusterNode> map(List<ClusterNode> workers, Void none) {
        return Map.of(new RemoteJob(input), workers.get(0));
    }

    @Override
    public ComputeJobResultPolicy result(ComputeJobResult result, List<ComputeJobResult> received) {
        if (result.getException() != null) {
            throw result.getException();
        }
        return ComputeJobResultPolicy.WAIT;
    }

    @Override
    public byte[] reduce(List<ComputeJobResult> results) {
        return results.get(0).getData();
    }
}
