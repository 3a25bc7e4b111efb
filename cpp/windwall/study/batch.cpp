#include "windwall/study/batch.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace windwall::study {
namespace {

/// What the workers and the waiting thread share: a queue that is only a number.
struct Queue {
    std::size_t items;
    std::atomic<std::size_t> next{0};
    std::atomic<std::size_t> done{0};
    std::atomic<bool> stop{false};
    std::mutex mutex{};
    std::condition_variable finished{};
    unsigned working = 0;
    std::exception_ptr thrown{};

    void work(const Worker& worker) noexcept {
        try {
            take_items(worker);
        } catch (...) {
            give_up(std::current_exception());
        }
        const std::lock_guard lock(mutex);
        if (--working == 0) finished.notify_all();
    }

    void take_items(const Worker& worker) {
        while (!stop) {
            const std::size_t item = next++;
            if (item >= items) break;
            worker(item);
            ++done;
        }
    }

    /// The first exception is kept for the waiting thread; nothing new is begun.
    void give_up(std::exception_ptr why) noexcept {
        const std::lock_guard lock(mutex);
        if (!thrown) thrown = std::move(why);
        stop = true;
    }

    void wait(const Progress& progress) {
        std::unique_lock lock(mutex);
        while (!finished.wait_for(lock, std::chrono::milliseconds(100),
                                  [this] { return working == 0; })) {
            lock.unlock();
            if (progress && !progress(done, items)) stop = true;
            lock.lock();
        }
    }
};

constexpr unsigned most_threads = 256;  // more than any machine gains from, and than it refuses

unsigned workers_for(std::size_t items, unsigned asked) {
    const unsigned all = std::max(1u, std::thread::hardware_concurrency());
    const unsigned threads = std::min(asked != 0 ? asked : all, most_threads);
    return static_cast<unsigned>(std::min<std::size_t>(threads, items));
}

}  // namespace

std::size_t run_batch(std::size_t items, const std::function<Worker()>& make_worker,
                      const BatchOptions& options) {
    Queue queue{items};
    const unsigned workers = workers_for(items, options.threads);
    queue.working = workers;  // falls as they finish, while others may still be starting
    std::vector<std::jthread> threads;
    for (unsigned i = 0; i < workers; ++i) {
        threads.emplace_back([&queue, worker = make_worker()] { queue.work(worker); });
    }
    // Even while it waits the calling thread stays free to listen, so a signal is heard at once.
    if (!threads.empty()) queue.wait(options.progress);
    threads.clear();
    if (queue.thrown) std::rethrow_exception(queue.thrown);
    if (options.progress) options.progress(queue.done, items);
    return queue.done;
}

}  // namespace windwall::study
