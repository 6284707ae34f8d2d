package evenrise.solver.recording;

/** Takes samples one by one, so that no file has to fit into memory. */
interface SampleSink {
    /**
     * @param seconds by the recorder's clock, rising
     * @param amps of each recorded phase, in the order of the file's columns; whoever calls may use the array again
     */
    void add(double seconds, double[] amps);
}
