#pragma once
#include <cstddef>
#include <functional>

namespace windwall::study {

/// Called on the thread that waits, about ten times a second; says false to stop early.
using Progress = std::function<bool(std::size_t done, std::size_t total)>;

struct BatchOptions {
    unsigned threads = 0;    // 0: as many as the machine has
    Progress progress = {};  // none: run to the end
};

/// One worker's way of doing one item. Made once for each worker, so that what it captures is the
/// worker's own.
using Worker = std::function<void(std::size_t item)>;

/// Does every item once, in any order, and returns how many were done. Each item writes only its
/// own place of the answer, so that neither the number of threads nor the order can change a
/// result. What a worker throws ends the batch and is thrown again on the calling thread.
std::size_t run_batch(std::size_t items, const std::function<Worker()>& make_worker,
                      const BatchOptions& options = {});

}  // namespace windwall::study
