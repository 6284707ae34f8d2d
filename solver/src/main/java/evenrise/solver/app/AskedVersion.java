package evenrise.solver.app;

import evenrise.solver.grid.GridWork;

/** Plans of one version of this program are no answer to another's question. */
final class AskedVersion {
    private AskedVersion() {}

    /** @param asking version of who asks */
    static void refuseOther(String asking) throws GridWork.InvalidInput {
        if (!asking.equals(ProgramVersion.ofThisProgram())) {
            throw new GridWork.InvalidInput(
                    "asked by version " + asking + " of a worker of version " + ProgramVersion.ofThisProgram());
        }
    }
}
