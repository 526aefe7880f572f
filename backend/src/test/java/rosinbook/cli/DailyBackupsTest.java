package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class DailyBackupsTest {
    @Test
    void one_that_fails_whatever_the_failure_does_not_end_those_to_come() throws InterruptedException {
        CountDownLatch tries = new CountDownLatch(3);
        ScheduledExecutorService worker = new ScheduledThreadPoolExecutor(1);
        try {
            Runnable work = DailyBackups.surviving(() -> {
                tries.countDown();
                throw new StackOverflowError("as when memory runs out");
            });
            worker.scheduleWithFixedDelay(work, 0, 1, TimeUnit.MILLISECONDS);
            assertTrue(tries.await(20, TimeUnit.SECONDS), () -> "it was tried no more; left: " + tries.getCount());
        } finally {
            worker.shutdownNow();
        }
    }
}
